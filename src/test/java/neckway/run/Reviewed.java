package neckway.run;

import java.util.Optional;
import java.util.OptionalDouble;
import neckway.drill.PlayableDrill;
import neckway.player.Performance;
import neckway.review.Clock;
import neckway.review.Review;

/**
 * A take of the virtual player, heard to its end with its first beat known and no guitar learnt.
 */
public final class Reviewed {
  private Reviewed() {}

  /** What is said of it. */
  public static Review of(PlayableDrill drill, Performance take) {
    return of(drill, take, take.samples(), verdict -> {});
  }

  /**
   * The same of its sound as it came in, told note by note.
   *
   * @param samples at the take's rate
   */
  public static Review of(
      PlayableDrill drill, Performance take, float[] samples, RunListener listener) {
    Run run =
        new Run(
            drill,
            Optional.empty(),
            take.sampleRate(),
            OptionalDouble.of(take.firstBeat()),
            Clock.MEASURED,
            listener);
    run.feed(samples, 0, samples.length);
    return run.finish();
  }
}
