package neckway.live;

import java.util.OptionalDouble;
import java.util.function.DoubleSupplier;
import neckway.sound.TimeStretch;

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

  /**
   * A recording that is played once.
   *
   * @param level at the one loudness of all playback, mono
   * @param sampleRate frames a second
   * @param firstBeatSeconds where its first beat is in it
   * @param speed 0.25 to 1; below 1 it is slower at the same pitch
   */
  public static LiveBacking once(
      float[] level,
      int sampleRate,
      double firstBeatSeconds,
      double speed,
      DoubleSupplier gain,
      Clicks clicks) {
    float[] slowed = TimeStretch.slowed(level, sampleRate, speed);
    return new LiveBacking(
        slowed,
        sampleRate,
        Math.min(firstBeatSeconds / speed, slowed.length / (double) sampleRate),
        OptionalDouble.empty(),
        gain,
        clicks);
  }

  public LiveBacking {
    if (!(firstBeatSeconds >= 0 && firstBeatSeconds * sampleRate <= samples.length)) {
      throw new IllegalArgumentException("first beat at " + firstBeatSeconds);
    }
  }
}
