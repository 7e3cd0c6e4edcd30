package neckway.review;

import java.util.List;
import java.util.OptionalInt;
import neckway.hand.RunPlan;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.Join;
import neckway.neck.Joins;
import neckway.neck.Neck;
import neckway.neck.PlacedShape;
import neckway.neck.PlannedShift;

/** Which note is the landing of a shift that was made on another string than planned. */
final class Landings {
  private final RunPlan plan;
  private final List<PlacedShape> chain;
  private final int top;

  Landings(RunPlan plan) {
    this.plan = plan;
    Neck neck = new Neck(plan.key(), plan.tuning(), plan.frets());
    int start = plan.route().steps().get(0).place().fret();
    this.chain = neck.chain(plan.route().shapes(), OptionalInt.of(start));
    this.top = (plan.route().stepsPerRound() - 1) / 2;
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
        Joins.between(chain.get(shift.pair()), chain.get(shift.pair() + 1), plan.tuning().strings())
            .stream()
            .filter(j -> j.string().equals(string))
            .findFirst()
            .orElseThrow();
    boolean low = join.lead() == Join.Lead.LOW_TO_MIDDLE;
    int note = 2 * (plan.tuning().count() - string.number()) + shift.pair();
    int round = shift.round() * 2 * top;
    return shift.direction() == Direction.UP
        ? round + note + (low ? 1 : 2)
        : round + 2 * top - note - (low ? 0 : 1);
  }
}
