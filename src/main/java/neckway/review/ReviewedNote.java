package neckway.review;

import java.util.List;
import java.util.OptionalInt;
import neckway.follow.Verdict;
import neckway.hand.PlaceGuess;

/**
 * A note as the review gives it.
 *
 * @param time onset, seconds
 * @param midi MIDI note number, the guitar's own offset taken off
 * @param cents off that, the guitar's own offset taken off
 * @param verdict what it was
 * @param step index of the step; empty for an extra note
 * @param attempt from 0
 * @param slot nearest slot of the grid
 * @param offMs signed distance from it, early negative
 * @param timing on, early, late or unsure
 * @param decided seconds of the take that had been heard when the verdict was given
 * @param places where it may have been played; the probabilities sum to 1
 */
public record ReviewedNote(
    double time,
    int midi,
    double cents,
    Verdict verdict,
    OptionalInt step,
    int attempt,
    long slot,
    double offMs,
    Timing timing,
    double decided,
    List<PlaceGuess> places) {
  /** Whether it stands in the place of a step: right or wrong. */
  public boolean inPlace() {
    return verdict.inPlace();
  }
}
