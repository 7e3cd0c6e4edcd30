package neckway.review.words;

import java.util.List;
import neckway.neck.PlannedShift;
import neckway.neck.Step;

/** A shift that was not made: the hand stayed in its shape. */
final class ShiftsMissed {
  /** Common practice, no source: the shift is what the drill is for. */
  private static final double SHIFT = 4;

  private final Played played;

  ShiftsMissed(Played played) {
    this.played = played;
  }

  List<Cause> causes() {
    return new MissedShifts(played).byKind().values().stream().map(this::cause).toList();
  }

  private Cause cause(List<PlannedShift> shifts) {
    PlannedShift first = shifts.get(0);
    Step landing = played.step(first.landingStep());
    String advice =
        "play "
            + Phrases.way(first.direction())
            + " to the "
            + Phrases.string(first.string())
            + " and stop on the landing, fret "
            + landing.place().fret()
            + " with the "
            + Phrases.finger(first.finger())
            + ", until the hand goes there by itself";
    return new Cause(
        SHIFT * shifts.size(),
        first.landingStep(),
        shifts.stream().map(PlannedShift::landingStep).toList(),
        advice);
  }
}
