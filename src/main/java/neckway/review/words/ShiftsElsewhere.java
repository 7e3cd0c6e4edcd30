package neckway.review.words;

import java.util.List;
import neckway.neck.PlannedShift;
import neckway.review.ReviewedShift;

/** A shift made on another string than planned: its notes are right, the hand's way is not. */
final class ShiftsElsewhere {
  /** Common practice, no source: no note is spoilt, but the string is what the drill asks for. */
  private static final double SHIFT = 2;

  private final Played played;

  ShiftsElsewhere(Played played) {
    this.played = played;
  }

  List<Cause> causes() {
    ShiftStrings strings = new ShiftStrings(played);
    return strings.moved().values().stream()
        .map(shifts -> cause(shifts, strings.steps(shifts)))
        .toList();
  }

  private Cause cause(List<ReviewedShift> shifts, List<Integer> landings) {
    PlannedShift first = shifts.get(0).planned();
    String advice =
        "play the shift "
            + Phrases.way(first.direction())
            + " on the "
            + Phrases.string(first.string())
            + " alone, its three notes, the "
            + Phrases.finger(first.finger())
            + " landing on fret "
            + played.step(first.landingStep()).place().fret()
            + ", until the hand goes there by itself";
    return new Cause(SHIFT * shifts.size(), first.landingStep(), landings, advice);
  }
}
