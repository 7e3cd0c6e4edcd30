package neckway.recording;

import java.nio.file.Path;
import java.util.OptionalDouble;

/**
 * What else was sounding while a take was recorded, from a loudspeaker.
 *
 * @param file its sound
 * @param starts where its first sample sounds in the take, seconds; empty: found by likeness
 */
public record Beside(Path file, OptionalDouble starts) {}
