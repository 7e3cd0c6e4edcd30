package neckway.recording;

import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import neckway.drill.PlayableDrill;
import neckway.file.sound.Channel;
import neckway.string.GuitarProfile;

/**
 * A recording and what it is held against.
 *
 * @param file the sound
 * @param drill what is played in it
 * @param guitar the guitar played, if it was learnt
 * @param firstBeat when the first note is due, seconds from the first sample; empty: found
 * @param channel which the guitar is on
 * @param beside what else was sounding, if that is known
 */
public record Recording(
    Path file,
    PlayableDrill drill,
    Optional<GuitarProfile> guitar,
    OptionalDouble firstBeat,
    Channel channel,
    Optional<Beside> beside) {
  /** One beside which nothing is known to have sounded. */
  public Recording(
      Path file,
      PlayableDrill drill,
      Optional<GuitarProfile> guitar,
      OptionalDouble firstBeat,
      Channel channel) {
    this(file, drill, guitar, firstBeat, channel, Optional.empty());
  }

  /** One of which no more is known. */
  public static Recording of(Path file, PlayableDrill drill, Optional<GuitarProfile> guitar) {
    return new Recording(file, drill, guitar, OptionalDouble.empty(), Channel.AUTO);
  }

  /** The same with another first beat and on another channel. */
  public Recording heardAs(OptionalDouble otherFirstBeat, Channel otherChannel) {
    return new Recording(file, drill, guitar, otherFirstBeat, otherChannel, beside);
  }

  /** The same held against another drill. */
  public Recording heldAgainst(PlayableDrill otherDrill) {
    return new Recording(file, otherDrill, guitar, firstBeat, channel, beside);
  }

  /** The same with something else sounding. */
  public Recording beside(Beside other) {
    return new Recording(file, drill, guitar, firstBeat, channel, Optional.of(other));
  }
}
