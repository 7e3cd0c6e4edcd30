package neckway.page;

import neckway.review.Milliseconds;
import neckway.review.Timing;

/**
 * The figure of time under a note.
 *
 * @param measure what it measures
 * @param ms signed milliseconds, early is negative
 * @param timing on the beat, early, late, or not to be told so finely
 * @param slots where the note fell, in slots from the beat it was due on; early is negative
 */
public record TimeFigure(Measure measure, double ms, Timing timing, double slots) {
  /** What a figure measures. */
  public enum Measure {
    /** How far off its beat a note was; after a wait, off the beat that it was waited for on. */
    OFF_THE_BEAT,
    /** How late a shift landed: under a landing that is said to be late. */
    LANDED_LATE
  }

  /** Whether the note's time is known finely enough for its figure to be told. */
  public boolean told() {
    return measure == Measure.LANDED_LATE || timing != Timing.UNSURE;
  }

  /** As it is shown: a landing rounded as in the sentence about it, others whole. */
  public long shownMs() {
    return measure == Measure.LANDED_LATE ? Milliseconds.rounded(ms) : Math.round(ms);
  }

  /** "+12", "-7", "0", or "?" where it cannot be told. */
  public String label() {
    long shown = shownMs();
    return told() ? (shown > 0 ? "+" : "") + shown : "?";
  }
}
