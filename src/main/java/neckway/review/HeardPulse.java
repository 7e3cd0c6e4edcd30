package neckway.review;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import neckway.drill.Pulse;
import neckway.drill.Slots;
import neckway.hear.RobustStatistics;

/**
 * The time from note to note as it was played, whatever the drill says. Only notes that follow each
 * other in the drill and in the take are used.
 */
public final class HeardPulse {
  /** Fewer times from note to note tell no tempo. */
  private static final int FEWEST = 6;

  /** Times from note to note within so much of their middle agree with it. */
  private static final double AGREEING_SHARE = 0.2;

  /** So many have to agree: else the player stopped too often to have had a tempo. */
  private static final double LEAST_AGREEING = 0.6;

  /** A tempo that differs by no more is the same one; more is noticed (Drake and Botte 1993). */
  private static final double SAME_SHARE = 0.04;

  /** Whole numbers of notes for so many slots: what players take for one another. */
  private static final double[] SIMPLE = {
    1.0 / 4, 1.0 / 3, 1.0 / 2, 2.0 / 3, 3.0 / 4, 4.0 / 3, 3.0 / 2, 2, 3, 4
  };

  private HeardPulse() {}

  /**
   * The middle time from one step to the next, seconds.
   *
   * @param attempt of the notes
   * @param slots as the player kept them
   * @return empty where they are too few or agree too little
   */
  public static OptionalDouble slotSeconds(List<ReviewedNote> notes, int attempt, Slots slots) {
    List<Double> intervals = new ArrayList<>();
    ReviewedNote last = null;
    for (ReviewedNote note : notes) {
      if (note.attempt() != attempt || !note.inPlace()) {
        continue;
      }
      if (last != null && last.step().getAsInt() + 1 == note.step().getAsInt()) {
        intervals.add((note.time() - last.time()) / slots.gapBefore(note.step().getAsInt()));
      }
      last = note;
    }
    return slotSeconds(intervals);
  }

  static OptionalDouble slotSeconds(List<Double> interOnsets) {
    if (interOnsets.size() < FEWEST) {
      return OptionalDouble.empty();
    }
    double[] all = interOnsets.stream().mapToDouble(Double::doubleValue).toArray();
    double middle = RobustStatistics.median(all);
    long agreeing =
        Arrays.stream(all).filter(t -> Math.abs(t - middle) <= AGREEING_SHARE * middle).count();
    return agreeing >= LEAST_AGREEING * all.length
        ? OptionalDouble.of(middle)
        : OptionalDouble.empty();
  }

  /** Whether two times from note to note are one tempo. */
  public static boolean isSame(double slotSeconds, double otherSlotSeconds) {
    return Math.abs(slotSeconds / otherSlotSeconds - 1) <= SAME_SHARE;
  }

  /**
   * The slot that fits a beat known from outside: the drill's, or a simple multiple where that is
   * what was played.
   */
  static double slotBesideBeat(OptionalDouble heardSlotSeconds, Pulse pulse) {
    double drill = pulse.slotSeconds();
    if (heardSlotSeconds.isEmpty()) {
      return drill;
    }
    return Arrays.stream(SIMPLE)
        .map(share -> drill / share)
        .filter(slot -> isSame(heardSlotSeconds.getAsDouble(), slot))
        .findFirst()
        .orElse(drill);
  }
}
