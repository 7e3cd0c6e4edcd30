package neckway.review.words;

import java.util.List;
import neckway.neck.PlannedShift;
import neckway.words.Wording;

/** The landing of a shift that came late, once or in several rounds. */
final class LandingsLate {
  /** Common practice, no source: a landing late by a slot stops the run, as two wrong notes do. */
  private static final double BY_A_SLOT = 2;

  /** Common practice, no source: the same landing late again is a habit. */
  private static final double AGAIN = 1.5;

  private final Played played;

  LandingsLate(Played played) {
    this.played = played;
  }

  List<Cause> causes() {
    return new LateLandings(played)
        .late().entrySet().stream().map(e -> cause(e.getKey(), e.getValue())).toList();
  }

  private Cause cause(LateLandings.Kind kind, List<LateLandings.Late> late) {
    double middleMs = LateLandings.middleMs(late);
    double each = BY_A_SLOT * Math.min(1, middleMs / played.slotMs());
    boolean again = late.size() > 1;
    PlannedShift first = late.get(0).shift();
    List<Integer> landings = late.stream().map(LateLandings.Late::landing).toList();
    String shift = LateLandings.shift(kind);
    if (!again) {
      String advice = Wording.of("landings.once", shift);
      return new Cause(each, first.landingStep(), landings, advice);
    }
    String advice = Wording.of("landings.again", shift);
    return new Cause(late.size() * each * AGAIN, first.landingStep(), landings, advice);
  }
}
