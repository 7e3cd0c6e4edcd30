package neckway.review.words;

import java.util.List;
import neckway.neck.PlannedShift;
import neckway.review.ReviewedShift;
import neckway.words.Wording;

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
    String shift = Phrases.shift(first.direction(), first.string());
    int fret = played.step(first.landingStep()).place().fret();
    String advice =
        fret == 0
            ? Wording.of("elsewhere.open", shift)
            : Wording.of("elsewhere", shift, Phrases.ordinal(first.finger()), fret);
    return new Cause(SHIFT * shifts.size(), first.landingStep(), landings, advice);
  }
}
