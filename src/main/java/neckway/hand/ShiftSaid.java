package neckway.hand;

import java.util.Optional;
import java.util.OptionalDouble;
import neckway.neck.GuitarString;
import neckway.neck.PlannedShift;

/**
 * What was said of a shift while the run went on, said once and kept.
 *
 * @param planned the shift
 * @param verdict what became of it; never unplayed
 * @param string where it was made; empty unless made or moved
 * @param p probability of the verdict; empty for unheard
 * @param decided seconds of the take that had been heard
 */
public record ShiftSaid(
    PlannedShift planned,
    ShiftVerdict verdict,
    Optional<GuitarString> string,
    OptionalDouble p,
    double decided) {
  static ShiftSaid on(PlannedShift planned, GuitarString string, double p, double now) {
    return new ShiftSaid(
        planned,
        string.equals(planned.string()) ? ShiftVerdict.MADE : ShiftVerdict.MOVED,
        Optional.of(string),
        OptionalDouble.of(p),
        now);
  }

  static ShiftSaid missed(PlannedShift planned, double p, double now) {
    return new ShiftSaid(planned, ShiftVerdict.MISSED, Optional.empty(), OptionalDouble.of(p), now);
  }

  static ShiftSaid unheard(PlannedShift planned, double now) {
    return new ShiftSaid(
        planned, ShiftVerdict.UNHEARD, Optional.empty(), OptionalDouble.empty(), now);
  }
}
