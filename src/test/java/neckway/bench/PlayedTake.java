package neckway.bench;

import java.util.List;
import java.util.Map;
import neckway.drill.PlayableDrill;

/**
 * A take with the drill that it is held against.
 *
 * @param take the sound and its notes
 * @param drill what was to be played
 * @param firstBeat when step 0 was due, seconds
 * @param mistakes what was done otherwise: the steps, by the word a review has for it
 */
public record PlayedTake(
    Take take, PlayableDrill drill, double firstBeat, Map<String, List<Integer>> mistakes) {

  /** The same with other sound. */
  PlayedTake withTake(Take other) {
    return new PlayedTake(other, drill, firstBeat, mistakes);
  }
}
