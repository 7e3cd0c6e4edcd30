package neckway.bench;

import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import neckway.bench.Measured.Said;
import neckway.review.Clock;
import neckway.review.Grid;
import neckway.review.Review;
import neckway.review.ReviewedStep;
import neckway.review.StepVerdict;
import neckway.run.Run;

/** Ear and follower together on a take, as a review has them. */
public final class FollowRun {
  private static final int BLOCK_FRAMES = 4096;

  private FollowRun() {}

  /** Reviews a take; the first beat is given, or it is to be found. */
  public static Measured of(PlayedTake played, boolean firstBeatGiven) {
    long before = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    Review review = review(played, firstBeatGiven);
    double cpu = (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - before) / 1e9;
    List<Said> notes =
        review.notes().stream()
            .map(
                n ->
                    new Said(
                        n.time(),
                        n.midi(),
                        n.verdict().word(),
                        n.step(),
                        n.attempt(),
                        n.offMs(),
                        n.decided()))
            .toList();
    List<Integer> skipped = new ArrayList<>();
    for (ReviewedStep step : review.steps()) {
      if (step.verdict() == StepVerdict.SKIPPED) {
        skipped.add(step.step().index());
      }
    }
    Grid grid = review.grid();
    return new Measured(
        notes, skipped, grid.firstBeat(), grid.slotSeconds(), grid.source().word(), cpu);
  }

  static Review review(PlayedTake played, boolean firstBeatGiven) {
    Run run =
        new Run(
            played.drill(),
            Optional.empty(),
            played.take().sampleRate(),
            firstBeatGiven ? OptionalDouble.of(played.firstBeat()) : OptionalDouble.empty(),
            Clock.MEASURED,
            verdict -> {});
    float[] samples = played.take().samples();
    for (int i = 0; i < samples.length; i += BLOCK_FRAMES) {
      run.feed(samples, i, Math.min(BLOCK_FRAMES, samples.length - i));
    }
    return run.finish();
  }
}
