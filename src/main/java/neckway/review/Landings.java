package neckway.review;

import neckway.drill.PlayableDrill;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.Join;
import neckway.neck.PlannedShift;

/** Which note is the landing of a shift that was made on another string than planned. */
final class Landings {
  private final PlayableDrill drill;
  private final int top;

  Landings(PlayableDrill drill) {
    this.drill = drill;
    this.top = (drill.route().stepsPerRound() - 1) / 2;
  }

  /**
   * Index into the route's steps of the note on which the hand lands, led by the finger of the
   * cleanest join there.
   */
  int step(PlannedShift shift, GuitarString string) {
    if (string.equals(shift.string())) {
      return shift.landingStep();
    }
    Join join =
        drill.pairs().get(shift.pair()).stream()
            .filter(j -> j.string().equals(string))
            .findFirst()
            .orElseThrow();
    boolean low = join.lead() == Join.Lead.LOW_TO_MIDDLE;
    int note = 2 * (drill.tuning().count() - string.number()) + shift.pair();
    int round = shift.round() * 2 * top;
    return shift.direction() == Direction.UP
        ? round + note + (low ? 1 : 2)
        : round + 2 * top - note - (low ? 0 : 1);
  }
}
