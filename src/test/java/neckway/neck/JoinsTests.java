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

  /** Common practice, no published source: a slide of the third finger is among the usual ones. */
  @Test
  void theThirdFingerOnAnInnerStringComesBeforeTheFourthOnAnOuterOne() {
    assertThat(joins("Eb major", 8, Shape.MINOR).stream().map(JoinsTests::shortly))
        .containsExactly("3/1 2", "4/1 2", "5/1 2", "3/3 2", "2/4 2", "1/4 2", "6/4 2");
  }

  /** Common practice, no published source. */
  @Test
  void fromMajorToDorianTheOrderIsByTheTableLineByLine() {
    assertThat(joins("A major", 5, Shape.MAJOR).stream().map(JoinsTests::shortly))
        .containsExactly("3/1 2", "4/4 2", "5/4 2", "6/4 2", "6/2 2", "2/4 3", "1/3 2 change");
  }

  /** Common practice, no published source: on an outer string the run turns round at once. */
  @Test
  void withTheSameTravelAnInnerStringComesBeforeAnOuterOne() {
    assertThat(joins("A major", 7, Shape.DORIAN).stream().map(JoinsTests::shortly))
        .startsWith("2/4 2", "1/1 2", "3/1 3");
  }

  private static String shortly(Join join) {
    return join.string()
        + "/"
        + join.finger()
        + " "
        + join.travel()
        + (join.lead() == Join.Lead.CHANGE ? " change" : "");
  }

  @Test
  void theReasonNamesTheFingerTheWayAndTheShiftBesideIt() {
    assertThat(joins("A major", 5, Shape.MAJOR).get(0).why())
        .isEqualTo(
            "The first finger stays down and slides 2 frets; the whole hand goes with it."
                + " On a string beside it the hand shifts again, inside the Dorian shape.");
  }

  @Test
  void theReasonOfAChangeSaysWhichFingerLiftsAndWhichOneTakesTheNote() {
    List<Join> joins = joins("A major", 5, Shape.MAJOR);
    assertThat(joins.get(joins.size() - 1).why())
        .isEqualTo(
            "No finger stays down: the fourth finger lifts and the third one takes the note 2"
                + " frets higher. On an outer string the run also turns round.");
  }

  @Test
  void anOpenStringIsNoFingerThatCouldSlide() {
    for (Join join : joins("G major", 0, Shape.MINOR)) {
      assertThat(join.lead()).isNotEqualTo(Join.Lead.LOW_TO_MIDDLE);
    }
  }
}
