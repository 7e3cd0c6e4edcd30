package neckway.review.words;

import java.util.List;
import neckway.neck.PlannedShift;
import neckway.neck.Step;
import neckway.words.Wording;

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
    String key = Phrases.towards("stayed", first.direction());
    String string = Phrases.ordinal(first.string());
    int fret = landing.place().fret();
    String advice =
        fret == 0
            ? Wording.of(key + ".open", string)
            : Wording.of(key, string, fret, Phrases.ordinal(first.finger()));
    return new Cause(
        SHIFT * shifts.size(),
        first.landingStep(),
        shifts.stream().map(PlannedShift::landingStep).toList(),
        advice);
  }
}
