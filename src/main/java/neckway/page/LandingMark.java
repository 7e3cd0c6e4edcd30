package neckway.page;

import java.util.Optional;
import neckway.hand.ShiftVerdict;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.PlannedShift;
import neckway.review.ReviewedShift;

/**
 * The mark of a shift, over the step on which it landed, or is planned to land while that is not
 * known. A shift that was missed landed nowhere and has none.
 *
 * @param planned the shift
 * @param step index of the step over which the mark stands
 * @param verdict what became of it, never missed; empty while that is not known, or not shown
 * @param movedTo the string on which it was made, where that was not the planned one
 */
public record LandingMark(
    PlannedShift planned,
    int step,
    Optional<ShiftVerdict> verdict,
    Optional<GuitarString> movedTo) {
  public LandingMark {
    if (verdict.equals(Optional.of(ShiftVerdict.MISSED))) {
      throw new IllegalArgumentException("a shift that was missed landed nowhere");
    }
  }

  static LandingMark of(ReviewedShift shift, int step) {
    return new LandingMark(
        shift.planned(),
        step,
        Optional.of(shift.verdict()),
        shift.string().filter(on -> shift.verdict() == ShiftVerdict.MOVED));
  }

  /** Where it is planned, of which nothing is told. */
  static LandingMark untold(PlannedShift planned) {
    return new LandingMark(planned, planned.landingStep(), Optional.empty(), Optional.empty());
  }

  /**
   * In characters: "^" up or "v" down; "^4" where it was made on string 4 and not as planned, "^?"
   * where the sound does not tell, ".^" where it was not reached.
   */
  public String sign() {
    String way = planned.direction() == Direction.UP ? "^" : "v";
    if (verdict.isEmpty()) {
      return way;
    }
    return switch (verdict.get()) {
      case MOVED -> way + movedTo.orElseThrow();
      case UNHEARD -> way + "?";
      case UNPLAYED -> "." + way;
      case MADE, MISSED -> way;
    };
  }
}
