package neckway.folder;

import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import neckway.file.sound.Channel;

/**
 * One recording to be reviewed.
 *
 * @param file the recording
 * @param drill the drill's file; empty: the usual one, or one to be recognised
 * @param guitar the guitar's profile, if one is named
 * @param name of the student or of the take
 * @param firstBeat when the first note is due, seconds; empty: found
 * @param channel which the guitar is on
 * @param when it was played, as ISO 8601 writes it; empty: when the file was last changed
 */
public record TakeJob(
    Path file,
    Optional<Path> drill,
    Optional<Path> guitar,
    String name,
    OptionalDouble firstBeat,
    Channel channel,
    Optional<String> when) {}
