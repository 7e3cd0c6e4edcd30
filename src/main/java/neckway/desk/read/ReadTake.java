package neckway.desk.read;

import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalInt;
import neckway.drill.PlayableDrill;
import neckway.review.Review;

/**
 * A take to be read.
 *
 * @param drill what was played
 * @param review what is said of it
 * @param take its sound, where it was kept
 * @param guess how many notes the player thought were right, if asked
 */
public record ReadTake(
    PlayableDrill drill, Review review, Optional<Path> take, OptionalInt guess) {}
