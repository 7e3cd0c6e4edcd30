package neckway.page;

import java.util.Optional;
import neckway.hand.ShiftVerdict;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.PlannedShift;

/**
 * The mark of a shift, over the step on which it was planned to land.
 *
 * @param planned the shift
 * @param verdict what became of it; empty while that is not known, or not shown
 * @param movedTo the string on which it was made, where that was not the planned one
 */
public record LandingMark(
    PlannedShift planned, Optional<ShiftVerdict> verdict, Optional<GuitarString> movedTo) {
  static LandingMark of(PlannedShift planned, ShiftVerdict verdict, Optional<GuitarString> madeOn) {
    return new LandingMark(
        planned, Optional.of(verdict), madeOn.filter(on -> verdict == ShiftVerdict.MOVED));
  }

  /** The same of which nothing is told. */
  LandingMark untold() {
    return new LandingMark(planned, Optional.empty(), Optional.empty());
  }

  /**
   * In characters: "^" up or "v" down; "^4" where it was made on string 4, "(^)" where the hand
   * stayed, "^?" where the sound does not tell, ".^" where it was not reached.
   */
  public String sign() {
    String way = planned.direction() == Direction.UP ? "^" : "v";
    if (verdict.isEmpty()) {
      return way;
    }
    return switch (verdict.get()) {
      case MADE -> way;
      case MOVED -> way + movedTo.orElseThrow();
      case MISSED -> "(" + way + ")";
      case UNHEARD -> way + "?";
      case UNPLAYED -> "." + way;
    };
  }
}
