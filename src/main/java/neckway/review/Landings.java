package neckway.review;

import neckway.drill.PlayableDrill;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.Join;
import neckway.neck.PlannedShift;

/** On which note a shift lands, on the string where it was planned or on another. */
public final class Landings {
  private final PlayableDrill drill;
  private final int top;

  public Landings(PlayableDrill drill) {
    this.drill = drill;
    this.top = (drill.route().stepsPerRound() - 1) / 2;
  }

  /** The same of a shift as reviewed: where it was heard to be made, else where it was planned. */
  public int step(ReviewedShift shift) {
    return step(shift.planned(), shift.string().orElse(shift.planned().string()));
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
