package neckway.review;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import neckway.drill.PlayableDrill;
import neckway.hear.RobustStatistics;

/**
 * A shift that landed late enough to be said. It is measured from the note before; where that note
 * came early, the landing only seems late, and no figure is given of it.
 *
 * @param shift what became of it
 * @param step index of the note on which the hand landed, on the string where it was heard to
 * @param lateMs how late, milliseconds, as the review has it
 * @param seeming whether it is the note before that came early
 */
public record LateLanding(ReviewedShift shift, int step, double lateMs, boolean seeming) {
  private static final double LATE_BANDS = 2;
  private static final double LATE_USUAL = 2;

  /** At least this share of a delay must be the landing's own, for its figure to be said. */
  private static final double OWN_SHARE = 0.7;

  /** As many notes before a landing tell the pulse that its predecessor is held against. */
  private static final int PULSE_NOTES = 5;

  private static final int FEWEST_PULSE_NOTES = 2;

  /** Those of a review that were late, in the order met. */
  public static List<LateLanding> of(PlayableDrill drill, Review review) {
    return all(drill, review).stream().filter(landing -> !landing.seeming()).toList();
  }

  /** Those that were late, and those that only seem to be, in the order met. */
  public static List<LateLanding> all(PlayableDrill drill, Review review) {
    if (!review.keepsTheGrid()) {
      return List.of();
    }
    double slotMs = 1000 * review.grid().slotSeconds();
    double bandMs = Timing.bandMs(review.grid().slotSeconds());
    double fromMs = fromMs(drill, review);
    Map<Integer, ReviewedNote> inPlace = new HashMap<>();
    Map<Integer, Double> ownOffMs = new HashMap<>();
    review.notes().stream()
        .filter(n -> n.attempt() == review.reviewed() && n.inPlace())
        .forEach(n -> inPlace.putIfAbsent(n.step().getAsInt(), n));
    inPlace.forEach((step, note) -> ownOffMs.put(step, review.ownOffMs(note)));
    Landings landings = new Landings(drill);
    List<LateLanding> late = new ArrayList<>();
    for (ReviewedShift shift : review.shifts()) {
      double lateMs = shift.lateMs().orElse(0);
      if (lateMs > fromMs) {
        int step = landings.step(shift);
        double earlyMs = Math.max(0, -beforeOffPulseMs(ownOffMs, step, slotMs));
        boolean itself = earlyMs <= (1 - OWN_SHARE) * lateMs;
        if (itself && offMs(inPlace, ownOffMs, step, slotMs).orElse(lateMs) > bandMs) {
          late.add(new LateLanding(shift, step, lateMs, false));
        } else if (!itself && earlyMs > bandMs) {
          late.add(new LateLanding(shift, step, lateMs, true));
        }
      }
    }
    return late;
  }

  /** From here on it is said: beyond what is called on the beat, and what the player strays by. */
  public static double fromMs(PlayableDrill drill, Review review) {
    double slotSeconds = review.grid().slotSeconds();
    double[] off = PulseKept.ownOffMs(drill.route(), review);
    double usual =
        off.length == 0 ? 0 : PulseKept.fourOfFiveFromOwnPulseMs(off, slotSeconds * 1000);
    return Math.max(LATE_BANDS * Timing.bandMs(slotSeconds), LATE_USUAL * usual);
  }

  /**
   * How far a landing lies from its slot, counted from the one after the note before, so that most
   * of a slot late is not early; empty where it was not heard.
   */
  private static Optional<Double> offMs(
      Map<Integer, ReviewedNote> inPlace,
      Map<Integer, Double> ownOffMs,
      int landing,
      double slotMs) {
    ReviewedNote before = inPlace.get(landing - 1);
    return Optional.ofNullable(inPlace.get(landing))
        .map(
            note -> {
              long waited = before == null ? 0 : Math.max(0, note.slot() - before.slot() - 1);
              return ownOffMs.get(landing) + waited * slotMs;
            });
  }

  /** How far the note before a landing lay from the middle of those before it, milliseconds. */
  private static double beforeOffPulseMs(
      Map<Integer, Double> ownOffMs, int landing, double slotMs) {
    Double before = ownOffMs.get(landing - 1);
    double[] off =
        IntStream.range(landing - 1 - PULSE_NOTES, landing - 1)
            .filter(ownOffMs::containsKey)
            .mapToDouble(ownOffMs::get)
            .toArray();
    if (before == null || off.length < FEWEST_PULSE_NOTES) {
      return 0;
    }
    double here = off[0];
    double[] near =
        IntStream.range(0, off.length)
            .mapToDouble(i -> here + Math.IEEEremainder(off[i] - here, slotMs))
            .toArray();
    return Math.IEEEremainder(before - RobustStatistics.median(near), slotMs);
  }
}
