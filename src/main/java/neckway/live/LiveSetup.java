package neckway.live;

import java.nio.file.Path;
import java.util.Optional;
import neckway.drill.PlayableDrill;
import neckway.string.GuitarProfile;

/**
 * What a live run in a thread of its own needs.
 *
 * @param drill what it is held against
 * @param guitar the guitar played, if it was learnt
 * @param input name of the input or a part of it; empty: the first
 * @param output the same of the output
 * @param clickGain share of full scale, 0 to 0.5
 * @param repeat whether rounds follow each other until stopped
 * @param restBars whole bars between the end of one round and the first note of the next, at least;
 *     1 or more
 * @param takes where each round's take is saved
 */
public record LiveSetup(
    PlayableDrill drill,
    Optional<GuitarProfile> guitar,
    Optional<String> input,
    Optional<String> output,
    double clickGain,
    boolean repeat,
    int restBars,
    Takes takes) {
  /** Names the file of each round's take. */
  @FunctionalInterface
  public interface Takes {
    /**
     * @param round from 0
     * @return a file in a folder that exists
     */
    Path file(int round);
  }

  public LiveSetup {
    if (restBars < 1) {
      throw new IllegalArgumentException("rest of " + restBars + " bars");
    }
  }
}
