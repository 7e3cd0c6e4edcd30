package neckway.follow;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import neckway.neck.PlannedShift;
import neckway.neck.Route;

/** How the notes of an attempt lay in their slots, the landings after a shift left apart. */
final class PulseKept {
  private static final double MOST = 0.8;

  private PulseKept() {}

  /** Signed distances from the slot, ms, of right and wrong notes whose onset is known finely. */
  static double[] offMs(Route route, List<ReviewedNote> notes, int attempt) {
    Set<Integer> landings =
        route.shifts().stream()
            .map(PlannedShift::landingStep)
            .collect(Collectors.toUnmodifiableSet());
    return notes.stream()
        .filter(n -> n.attempt() == attempt && n.timing() != Timing.UNSURE)
        .filter(n -> n.verdict() == Verdict.RIGHT || n.verdict() == Verdict.WRONG)
        .filter(n -> !landings.contains(n.step().getAsInt()))
        .mapToDouble(ReviewedNote::offMs)
        .toArray();
  }

  /** How far four notes of five lay from their own middle, ms. */
  static double fourOfFiveWithinMs(double[] offMs) {
    double middle = Figures.median(offMs);
    double[] away = Arrays.stream(offMs).map(off -> Math.abs(off - middle)).sorted().toArray();
    return away[(int) Math.ceil(MOST * away.length) - 1];
  }
}
