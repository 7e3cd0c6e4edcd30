package neckway.place;

import java.util.List;
import neckway.hear.HeardNote;

/** Says where on the neck the notes of a take may have been played. */
public interface Places {
  /**
   * Every place where that pitch can be played, from the lowest string up.
   *
   * @param note as heard
   * @param midi its MIDI note number with the guitar's own offset taken off
   * @return probabilities that sum to 1; empty where the neck has no such pitch
   */
  List<PlaceGuess> of(HeardNote note, int midi);
}
