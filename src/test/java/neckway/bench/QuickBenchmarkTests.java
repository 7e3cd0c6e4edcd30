package neckway.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import neckway.player.settings.PlayerSettings.Condition;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * A small part of the benchmark, to be run with every build on takes of its own. The floors are set
 * below what so few takes gave when they were last raised; the figures themselves are in
 * docs/benchmark.md.
 */
@Tag("slow")
class QuickBenchmarkTests {
  /** Seeds that neither development nor the published table uses. */
  private static final long FIRST_SEED = 2_000_000;

  private static Totals totals(String name, List<Callable<PlayedTake>> makers) throws Exception {
    Totals totals = new Totals();
    Batch.run(
        name,
        makers,
        played -> {
          totals.add(played, FollowRun.of(played, true));
          return true;
        });
    return totals;
  }

  private static long mostRight(String name, List<Callable<PlayedTake>> makers) throws Exception {
    return Batch.run(
            name,
            makers,
            played ->
                FollowRun.of(played, true).notes().stream()
                    .filter(s -> s.verdict().equals(Measured.RIGHT))
                    .count())
        .stream()
        .mapToLong(Long::longValue)
        .max()
        .orElse(0);
  }

  @Test
  void cleanPlaying() throws Exception {
    Totals t = totals("clean", Families.virtual(Population.HARD, 12, FIRST_SEED, Condition.CLEAN));
    assertThat(t.wide.f1()).isGreaterThan(0.95);
    assertThat(t.narrow.f1()).isGreaterThan(0.94);
    assertThat(t.onsetMs.quantile(0.5)).isLessThan(1.5);
    assertThat(t.onsetMs.quantile(0.95)).isLessThan(5);
    assertThat(t.offErrorMs.quantile(0.5)).isLessThan(1.5);
    assertThat(t.rightDelayMs.quantile(0.5)).isLessThan(28);
    assertThat(t.mistakes.recall().orElse(0)).isGreaterThan(0.85);
  }

  @Test
  void ordinaryPlaying() throws Exception {
    Totals t =
        totals("ordinary", Families.virtual(Population.ORDINARY, 8, FIRST_SEED, Condition.CLEAN));
    assertThat(t.wide.f1()).isGreaterThan(0.98);
    assertThat(t.mistakes.invented()).isLessThanOrEqualTo(1);
  }

  @Test
  void playingThroughAnAmpInARoomWithNoiseAndClick() throws Exception {
    Totals t = totals("dirty", Families.virtual(Population.HARD, 12, FIRST_SEED, Condition.DIRTY));
    assertThat(t.wide.f1()).isGreaterThan(0.7);
    assertThat(t.onsetMs.quantile(0.5)).isLessThan(3);
    assertThat(t.rightDelayMs.quantile(0.5)).isLessThan(36);
  }

  @Test
  void slidAndHammeredNotes() throws Exception {
    Totals t =
        totals("legato", Families.virtual(Population.HARD, 12, FIRST_SEED, Condition.LEGATO));
    assertThat(t.wide.f1()).isGreaterThan(0.9);
  }

  @Test
  void strangersAreNotCalledRight() throws Exception {
    assertThat(mostRight("semitone up", Families.semitoneUp(4, FIRST_SEED))).isLessThanOrEqualTo(1);
    assertThat(mostRight("random", Families.randomNotes(4, FIRST_SEED))).isLessThanOrEqualTo(8);
    // vowels have pitch, and some by chance that of a step
    assertThat(mostRight("speech", Families.speechLike(4, FIRST_SEED))).isLessThanOrEqualTo(6);
    assertThat(mostRight("noise", Families.noise(4, FIRST_SEED))).isLessThanOrEqualTo(1);
  }

  /** Sound that is not ours: the JDK's own synthesizer, General MIDI guitars. */
  @Test
  void theSynthesizerOfTheJdk() throws Exception {
    JdkSynthTakes builtIn = JdkSynthTakes.banks().get(0);
    Totals t = totals("JDK synthesizer", Families.synthesizer(builtIn, 6, FIRST_SEED));
    assertThat(t.wide.f1()).isGreaterThan(0.7);
    assertThat(t.onsetMs.quantile(0.5)).isLessThan(1.5);
  }

  /** Sound that is not ours: single notes of real guitars, where they are at hand. */
  @Test
  void runsStitchedFromRecordedNotes() throws Exception {
    Optional<RecordedNotes> recorded = RecordedNotes.load();
    assumeTrue(recorded.isPresent(), "recorded notes are not at " + RecordedNotes.folder());
    List<Callable<PlayedTake>> makers = new ArrayList<>();
    for (String guitar : List.of("solidbody", "nylon", "archtop-microphone")) {
      makers.addAll(Families.stitched(recorded.get(), guitar, 4, FIRST_SEED, false));
    }
    assertThat(totals("recorded notes", makers).wide.f1()).isGreaterThan(0.9);
  }
}
