package neckway.desk.read;

import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalInt;
import neckway.drill.PlayableDrill;
import neckway.recording.Recording;
import neckway.review.Review;

/**
 * A take to be read.
 *
 * @param drill what was played
 * @param review what is said of it
 * @param take its sound, where it was kept
 * @param guess how many notes the player thought were right, if asked
 * @param recording what was asked of the recording; empty where it was played live
 */
public record ReadTake(
    PlayableDrill drill,
    Review review,
    Optional<Path> take,
    OptionalInt guess,
    Optional<Recording> recording) {
  /** One that was played live. */
  public static ReadTake played(
      PlayableDrill drill, Review review, Optional<Path> take, OptionalInt guess) {
    return new ReadTake(drill, review, take, guess, Optional.empty());
  }

  /** One that was recorded somewhere else. */
  public static ReadTake recorded(Recording recording, Review review) {
    return new ReadTake(
        recording.drill(),
        review,
        Optional.of(recording.file()),
        OptionalInt.empty(),
        Optional.of(recording));
  }
}
