package neckway.live;

import java.util.OptionalDouble;
import java.util.function.DoubleSupplier;

/**
 * What is played in place of the click. Its first beat is the run's; before that, in the count-in,
 * it fades in.
 *
 * @param samples mono, at the one loudness of all playback
 * @param sampleRate frames a second
 * @param firstBeatSeconds where its first beat is in it; 0 where it goes round
 * @param loopBeats after how many beats it begins again, what rings on kept; empty: it is played
 *     once, and the click goes on where it has ended
 * @param gain how loud it is, 0 to 1; asked while it plays, on the thread that plays
 * @param clicks what is clicked beside it
 */
public record LiveBacking(
    float[] samples,
    int sampleRate,
    double firstBeatSeconds,
    OptionalDouble loopBeats,
    DoubleSupplier gain,
    Clicks clicks) {
  /** What is clicked beside it. */
  public enum Clicks {
    /** The count-in alone. */
    COUNT_IN,
    /** Every beat. */
    ALL
  }

  /** How loud it is where nothing is said: quiet, because headphones differ by a great deal. */
  public static final double USUAL_GAIN = 0.2;

  public LiveBacking {
    if (!(firstBeatSeconds >= 0 && firstBeatSeconds * sampleRate <= samples.length)) {
      throw new IllegalArgumentException("first beat at " + firstBeatSeconds);
    }
  }
}
