package neckway.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import neckway.Await;
import neckway.bench.ShiftTakes.ShiftTake;
import neckway.follow.NoteVerdict;
import neckway.hand.ShiftSaid;
import neckway.player.settings.Guitar;
import neckway.player.surroundings.Amp;
import neckway.review.Clock;
import neckway.review.Review;
import neckway.run.Run;
import neckway.run.RunListener;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A run on a guitar that is known says the same, whatever blocks its sound comes in. */
class RunBlockSizeTests {
  private static ShiftTake take;

  @BeforeAll
  static void play() {
    take = ShiftTakes.virtual(1, Amp.Voicing.NONE, Guitar.Model.ELECTRIC);
  }

  private static Review review(int block, List<ShiftSaid> said) {
    return fed(run(said), block);
  }

  private static Run run(List<ShiftSaid> said) {
    PlayedTake played = take.played();
    Thread fed = Thread.currentThread();
    return new Run(
        played.drill(),
        take.guitar(),
        played.take().sampleRate(),
        OptionalDouble.of(played.firstBeat()),
        Clock.MEASURED,
        new RunListener() {
          @Override
          public void decided(NoteVerdict verdict) {
            // the review has them
          }

          @Override
          public void shifted(int attempt, ShiftSaid shift) {
            assertThat(Thread.currentThread()).as("told on the thread that feeds").isSameAs(fed);
            said.add(shift);
          }
        });
  }

  private static Review fed(Run run, int block) {
    float[] samples = take.played().take().samples();
    for (int from = 0; from < samples.length; from += block) {
      run.feed(samples, from, Math.min(block, samples.length - from));
    }
    return run.finish();
  }

  @Test
  void blocksOfAnySizeGiveTheSameShiftsAndPlaces() {
    List<ShiftSaid> said = new ArrayList<>();
    Review one = review(37, said);
    assertThat(said).isNotEmpty();
    for (int block : new int[] {256, 4_096, take.played().take().samples().length}) {
      List<ShiftSaid> again = new ArrayList<>();
      Review other = review(block, again);
      assertThat(other.notes()).isEqualTo(one.notes());
      assertThat(other.shifts()).isEqualTo(one.shifts());
      assertThat(other.summary()).isEqualTo(one.summary());
      assertThat(again).isEqualTo(said);
    }
  }

  @Test
  void shiftsAreToldBeforeTheRunIsOver() throws Exception {
    List<ShiftSaid> said = new ArrayList<>();
    Run run = run(said);
    float[] samples = take.played().take().samples();
    run.feed(samples, 0, samples.length);
    Await.until(
        "a shift is told",
        60,
        () -> {
          run.feed(new float[256], 0, 256);
          return !said.isEmpty();
        });
    run.finish();
  }

  /** What was said while the run went on is what its review has. */
  @Test
  void theReviewRepeatsWhatWasSaid() {
    List<ShiftSaid> said = new ArrayList<>();
    Review review = review(512, said);
    for (ShiftSaid shift : said) {
      assertThat(
              review.shifts().stream()
                  .filter(s -> s.planned().equals(shift.planned()))
                  .map(s -> List.of(s.verdict(), s.string(), s.p()))
                  .findFirst()
                  .orElseThrow())
          .isEqualTo(List.of(shift.verdict(), shift.string(), shift.p()));
    }
  }
}
