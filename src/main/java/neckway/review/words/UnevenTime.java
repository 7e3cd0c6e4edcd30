package neckway.review.words;

import java.util.List;
import neckway.words.Wording;

/** A run that is uneven as a whole. */
final class UnevenTime {
  /** From here on notes are heard to limp: 10 % of a slot, and 25 ms (common practice). */
  private static final double SHARE = 0.1;

  private static final double LEAST_MS = 25;

  /**
   * Common practice, no source: a run that limps by a tenth of a slot is as bad as a wrong note.
   */
  private static final double BY_A_SLOT = 10;

  private final Played played;
  private final AfterTheShift after;

  UnevenTime(Played played) {
    this.played = played;
    this.after = new AfterTheShift(played);
  }

  List<Cause> causes() {
    if (!isUneven()) {
      return List.of();
    }
    return List.of(
        Cause.ofTheWhole(
            BY_A_SLOT * ownPulseMs() / played.slotMs(),
            Wording.of("uneven", played.slowerTempo())));
  }

  /** Whether the notes limp, those aside that a shift made come early or late. */
  boolean isUneven() {
    return notes() >= KeptTime.FEWEST_TO_TIME
        && played.review().keepsTheGrid()
        && ownPulseMs() >= Math.max(LEAST_MS, SHARE * played.slotMs());
  }

  /** Four notes in five lay so near to the player's own pulse, ms. */
  double ownPulseMs() {
    return played.ownPulseMsWithout(after.steps());
  }

  /** How many notes tell of it. */
  int notes() {
    return played.offMsWithout(after.steps()).length;
  }
}
