package neckway.neck;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class JoinsTests {
  private static List<Join> joins(String key, int start, Shape lower) {
    Neck neck = new Neck(Key.parse(key), Tuning.STANDARD, 22);
    return NeckMap.ofChain(neck, List.of(lower, lower.next()), OptionalInt.of(start)).joins();
  }

  private static List<String> by(List<Join> joins, int finger) {
    return joins.stream()
        .filter(join -> join.finger() == finger && join.lead() != Join.Lead.CHANGE)
        .map(join -> join.string() + " over " + join.travel())
        .sorted()
        .toList();
  }

  /** Common practice, no published source. */
  @Test
  void fromMajorToDorianTheOneFirstFingerJoinIsOnTheThirdString() {
    List<Join> joins = joins("A major", 5, Shape.MAJOR);

    assertThat(joins.stream().filter(j -> j.finger() == 1)).hasSize(1);
    assertThat(by(joins, 1)).containsExactly("3 over 2");
    Join best = joins.get(0);
    assertThat(best.string().number()).isEqualTo(3);
    assertThat(best.from()).isEqualTo(4);
    assertThat(best.to()).isEqualTo(6);
    assertThat(best.rank()).isEqualTo(1);
  }

  /** Common practice, no published source. */
  @Test
  void fromMajorToDorianTheFourthFingerLeadsOnFourStrings() {
    assertThat(by(joins("A major", 5, Shape.MAJOR), 4))
        .containsExactly("2 over 3", "4 over 2", "5 over 2", "6 over 2");
  }

  /** Common practice, no published source. */
  @Test
  void fromMajorToDorianTheFirstStringNeedsAChangeOfFingers() {
    List<Join> first =
        joins("A major", 5, Shape.MAJOR).stream().filter(j -> j.string().number() == 1).toList();

    assertThat(first).hasSize(1);
    assertThat(first.get(0).lead()).isEqualTo(Join.Lead.CHANGE);
    assertThat(first.get(0).why()).startsWith("No finger stays down");
    // It is the most awkward of all.
    assertThat(first.get(0).rank()).isEqualTo(joins("A major", 5, Shape.MAJOR).size());
  }

  @Test
  void theReasonNamesTheFingerTheWayAndTheMoveBesideIt() {
    assertThat(joins("A major", 5, Shape.MAJOR).get(0).why())
        .isEqualTo(
            "The first finger stays down and slides 2 frets; the whole hand goes with it."
                + " The hand moves again beside it, inside the Dorian shape.");
  }

  @Test
  void anOpenStringIsNoFingerThatCouldSlide() {
    for (Join join : joins("G major", 0, Shape.MINOR)) {
      assertThat(join.lead()).isNotEqualTo(Join.Lead.LOW_TO_MIDDLE);
    }
  }
}
