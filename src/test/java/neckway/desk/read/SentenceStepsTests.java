package neckway.desk.read;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import neckway.hand.ShiftVerdict;
import neckway.page.PagedTake;
import neckway.review.Landings;
import org.junit.jupiter.api.Test;

/** The sentences of the test audio lead to the notes that its truth has. */
class SentenceStepsTests {
  private static ReadTake read(PagedTake take) {
    return ReadTake.played(take.drill(), take.review(), Optional.empty(), OptionalInt.empty());
  }

  private static List<Integer> named(ReadTake take, String part) {
    String sentence =
        take.review().summary().words().stream()
            .filter(words -> words.contains(part))
            .findFirst()
            .orElseThrow();
    return new SentenceSteps(take).of(sentence);
  }

  @Test
  void aHandThatStayedLeadsToTheLandingThatWasMissed() {
    ReadTake take = read(PagedTake.recorded("missed-shift"));
    List<Integer> missed =
        take.review().shifts().stream()
            .filter(shift -> shift.verdict() == ShiftVerdict.MISSED)
            .map(new Landings(take.drill())::step)
            .toList();
    assertThat(missed).isNotEmpty();
    assertThat(named(take, "hand stayed")).isNotEmpty().isSubsetOf(missed);
    assertThat(named(take, "First: play up to")).isNotEmpty().isSubsetOf(missed);
  }

  @Test
  void slipsLeadToTheirSteps() {
    ReadTake take = read(PagedTake.recorded("three-slips"));
    for (String kind : List.of(" wrong: ", " left out: ", " struck twice: ")) {
      assertThat(named(take, kind)).as(kind).hasSize(1);
    }
  }

  @Test
  void sentenceOfTheWholeLeadsNowhere() {
    ReadTake take = read(PagedTake.recorded("three-slips"));
    assertThat(new SentenceSteps(take).of(take.review().summary().words().get(0))).isEmpty();
  }
}
