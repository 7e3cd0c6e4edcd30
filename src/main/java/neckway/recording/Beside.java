package neckway.recording;

import java.nio.file.Path;
import java.util.OptionalDouble;

/**
 * What else was sounding while a take was recorded, from a loudspeaker.
 *
 * @param file its sound
 * @param starts where its first sample sounds in the take, seconds; empty: found by likeness
 * @param how it is taken out
 */
public record Beside(Path file, OptionalDouble starts, How how) {
  /** How it is taken out. */
  public enum How {
    /** The whole take is gone through several times. */
    WHOLE,
    /**
     * Once, as a live run does. The file is what was played, on the take's own frames from {@code
     * starts} on or from its first one.
     */
    AS_IT_CAME
  }

  /** Taken out of the whole take. */
  public Beside(Path file, OptionalDouble starts) {
    this(file, starts, How.WHOLE);
  }
}
