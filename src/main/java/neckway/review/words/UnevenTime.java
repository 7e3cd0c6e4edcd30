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

  /** Slower by so much, for a beginning. */
  private static final double SLOWER = 0.85;

  private final Played played;

  UnevenTime(Played played) {
    this.played = played;
  }

  List<Cause> causes() {
    double ownPulseMs = played.ownPulseMs();
    if (played.offMs().length < KeptTime.FEWEST_TO_TIME
        || !played.review().keepsTheGrid()
        || ownPulseMs < Math.max(LEAST_MS, SHARE * played.slotMs())) {
      return List.of();
    }
    long slower = Math.round(SLOWER * played.review().grid().tempo());
    return List.of(
        Cause.ofTheWhole(BY_A_SLOT * ownPulseMs / played.slotMs(), Wording.of("uneven", slower)));
  }
}
