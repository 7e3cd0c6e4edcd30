package neckway.review.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import neckway.hand.ShiftVerdict;
import neckway.page.PagedTake;
import neckway.review.Landings;
import neckway.review.ReviewedStep;
import neckway.review.StepVerdict;
import neckway.review.words.Sentence.Part;
import org.junit.jupiter.api.Test;

/**
 * Sentences tell of the notes that the truth of the test audio has, and name those they tell of.
 */
class SentenceTests {
  private static List<Sentence> said(PagedTake take) {
    return Words.said(take.drill(), take.review());
  }

  private static Sentence saying(PagedTake take, String part) {
    return said(take).stream().filter(s -> s.text().contains(part)).findFirst().orElseThrow();
  }

  @Test
  void aHandThatStayedLeadsToTheLandingThatWasMissed() {
    PagedTake take = PagedTake.recorded("missed-shift");
    List<Integer> missed =
        take.review().shifts().stream()
            .filter(shift -> shift.verdict() == ShiftVerdict.MISSED)
            .map(new Landings(take.drill())::step)
            .toList();
    assertThat(missed).isNotEmpty();
    assertThat(saying(take, "hand stayed").steps()).isNotEmpty().isSubsetOf(missed);
    assertThat(saying(take, "First: play up to").steps()).isNotEmpty().isSubsetOf(missed);
  }

  @Test
  void slipsLeadToTheirSteps() {
    PagedTake take = PagedTake.recorded("three-slips");
    for (String kind : List.of(" wrong: ", " left out: ", " struck twice: ")) {
      assertThat(saying(take, kind).steps()).as(kind).hasSize(1);
    }
    Set<Integer> spoilt =
        take.review().steps().stream()
            .filter(s -> s.verdict() == StepVerdict.WRONG || s.verdict() == StepVerdict.SKIPPED)
            .map(ReviewedStep::step)
            .map(step -> step.index())
            .collect(Collectors.toSet());
    assertThat(saying(take, "First: ").steps()).isNotEmpty().isSubsetOf(spoilt);
  }

  @Test
  void scoreAndAdviceAreToldFromTheDetailsAndTheScoreTellsOfNoNotes() {
    List<Sentence> said = said(PagedTake.recorded("three-slips"));
    assertThat(said.get(0).part()).isEqualTo(Part.SCORE);
    assertThat(said.get(0).steps()).isEmpty();
    assertThat(said.get(said.size() - 1).part()).isEqualTo(Part.NEXT);
    assertThat(said.subList(1, said.size() - 1))
        .extracting(Sentence::part)
        .containsOnly(Part.DETAIL);
  }

  /** Over every sentence that a review can say: a place that is named is one that is told of. */
  @Test
  void everyPlaceThatIsNamedIsOneOfTheNotesToldOf() {
    int places = 0;
    for (MadeUp take : Phrasebook.takes()) {
      for (Sentence sentence : Words.said(take.drill(), take.review())) {
        for (int step : sentence.steps()) {
          assertThat(step).isBetween(0, take.drill().route().steps().size() - 1);
        }
        if (sentence.text().matches(".* (wrong|left out|struck twice): .*")
            && !sentence.text().contains("marked below")) {
          for (int step : sentence.steps()) {
            String spot = Phrases.fretOnString(take.drill().route().steps().get(step).place());
            assertThat(sentence.text()).contains(spot);
            places++;
          }
        }
      }
    }
    assertThat(places).isGreaterThan(10);
  }

  /** What is said of more rounds than were asked, or of another drill, leads as far as it can. */
  @Test
  void sentencesOfAnotherKindAreKeptAsDetails() {
    PagedTake take = PagedTake.recorded("three-slips");
    List<String> more = OtherwisePlayed.moreRounds(1, take.drill(), take.review());
    List<Sentence> said = Words.said(take.drill(), take.review().withWords(more));
    assertThat(said).extracting(Sentence::text).isEqualTo(more);
    assertThat(said.get(0).part()).isEqualTo(Part.DETAIL);
    assertThat(said.get(said.size() - 1).part()).isEqualTo(Part.NEXT);
  }
}
