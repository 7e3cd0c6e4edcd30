package neckway.review;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import neckway.hear.RobustStatistics;
import neckway.neck.PlannedShift;
import neckway.neck.Route;

/** How the notes of an attempt lay in their slots, the landings after a shift left apart. */
public final class PulseKept {
  private static final double MOST = 0.8;
  private static final int AROUND = 4;

  private PulseKept() {}

  /** Signed distances from the slot, ms, of right and wrong notes whose onset is known finely. */
  public static double[] offMs(Route route, List<ReviewedNote> notes, int attempt) {
    return timed(route, notes, attempt).mapToDouble(ReviewedNote::offMs).toArray();
  }

  private static Stream<ReviewedNote> timed(Route route, List<ReviewedNote> notes, int attempt) {
    Set<Integer> landings =
        route.shifts().stream()
            .map(PlannedShift::landingStep)
            .collect(Collectors.toUnmodifiableSet());
    return notes.stream()
        .filter(n -> n.attempt() == attempt && n.timing() != Timing.UNSURE)
        .filter(ReviewedNote::inPlace)
        .filter(n -> !landings.contains(n.step().getAsInt()));
  }

  /** The same from the slots as the player swings. */
  public static double[] ownOffMs(Route route, Review review) {
    return timed(route, review.notes(), review.reviewed()).mapToDouble(review::ownOffMs).toArray();
  }

  /** The same of all notes but those of some steps. */
  public static double[] ownOffMsWithout(Set<Integer> steps, Route route, Review review) {
    return timed(route, review.notes(), review.reviewed())
        .filter(n -> !steps.contains(n.step().getAsInt()))
        .mapToDouble(review::ownOffMs)
        .toArray();
  }

  /** How far four notes of five lay from the middle of all, ms. */
  public static double fourOfFiveFromMiddleMs(double[] offMs) {
    double middle = RobustStatistics.median(offMs);
    return fourOfFive(Arrays.stream(offMs).map(off -> Math.abs(off - middle)).toArray());
  }

  /**
   * How far four notes of five lay from the player's own pulse, ms: from the middle of the notes
   * around each, so that a stop, after which the player comes in elsewhere, does no harm.
   *
   * @param gapMs a slot
   */
  public static double fourOfFiveFromOwnPulseMs(double[] offMs, double gapMs) {
    double[] away = new double[offMs.length];
    for (int i = 0; i < away.length; i++) {
      int from = Math.max(0, Math.min(i - AROUND, offMs.length - 2 * AROUND - 1));
      int to = Math.min(offMs.length, from + 2 * AROUND + 1);
      double here = offMs[i];
      double[] near =
          Arrays.stream(offMs, from, to)
              .map(off -> Math.IEEEremainder(off - here, gapMs))
              .toArray();
      away[i] = Math.abs(RobustStatistics.median(near));
    }
    return fourOfFive(away);
  }

  private static double fourOfFive(double[] away) {
    Arrays.sort(away);
    return away[(int) Math.ceil(MOST * away.length) - 1];
  }
}
