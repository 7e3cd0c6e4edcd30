package neckway.review;

import java.util.ArrayList;
import java.util.List;
import neckway.drill.PlayableDrill;

/**
 * A shift that landed late enough to be said.
 *
 * @param shift what became of it
 * @param step index of the note on which the hand landed, on the string where it was heard to
 * @param lateMs how late, milliseconds, as the review has it
 */
public record LateLanding(ReviewedShift shift, int step, double lateMs) {
  private static final double LATE_BANDS = 2;
  private static final double LATE_USUAL = 2;

  /** Those of a review, in the order met. */
  public static List<LateLanding> of(PlayableDrill drill, Review review) {
    double fromMs = fromMs(drill, review);
    Landings landings = new Landings(drill);
    List<LateLanding> late = new ArrayList<>();
    for (ReviewedShift shift : review.shifts()) {
      if (shift.lateMs().isPresent() && shift.lateMs().getAsDouble() > fromMs) {
        late.add(new LateLanding(shift, landings.step(shift), shift.lateMs().getAsDouble()));
      }
    }
    return late;
  }

  /** From here on it is said: beyond what is called on the beat, and what the player strays by. */
  private static double fromMs(PlayableDrill drill, Review review) {
    double slotSeconds = review.grid().slotSeconds();
    double[] off = PulseKept.offMs(drill.route(), review.notes(), review.reviewed());
    double usual =
        off.length == 0 ? 0 : PulseKept.fourOfFiveFromOwnPulseMs(off, slotSeconds * 1000);
    return Math.max(LATE_BANDS * Timing.bandMs(slotSeconds), LATE_USUAL * usual);
  }
}
