package neckway.sound;

import java.util.OptionalDouble;

/**
 * When the clicks of a run fall on the input's frames.
 *
 * <p>Surest first: by the clicks themselves where the input hears them in the count-in; else by
 * what the devices say of their positions in this run and the pair's measured round trip; else by
 * the positions alone, and then it is not to be relied on.
 *
 * @param offsetFrames input frame less output frame
 * @param source how it is known
 */
public record ClickClock(double offsetFrames, Source source) {
  /** How the offset is known. */
  public enum Source {
    /** The input heard the count-in. */
    HEARD,
    /** By the round trip measured before for these devices. */
    STORED,
    /** Not measured. */
    UNMEASURED
  }

  /** Fewer clicks than this are not believed. */
  static final int LEAST_CLICKS = 3;

  private static final double WITHIN_SECONDS = 0.150;
  private static final double AGREE_SECONDS = 0.001;

  /**
   * Finds the offset.
   *
   * @param sound the take so far, from its first frame
   * @param length how much of it
   * @param sampleRate frames a second
   * @param countIn how many clicks lie within it
   * @param reportedFrames by the devices' positions
   * @param extraSeconds the pair's measured round trip, if it was measured
   */
  public static ClickClock of(
      float[] sound,
      int length,
      double sampleRate,
      ClickTrack track,
      int countIn,
      double reportedFrames,
      OptionalDouble extraSeconds) {
    double expected = reportedFrames + extraSeconds.orElse(0) * sampleRate;
    double within = Math.min(WITHIN_SECONDS * sampleRate, 0.45 * track.framesPerBeat());
    ClickFinder.Heard heard = ClickFinder.offset(sound, length, track, countIn, expected, within);
    if (heard.count() >= Math.max(LEAST_CLICKS, countIn - 1)
        && heard.spread() <= AGREE_SECONDS * sampleRate) {
      return new ClickClock(heard.median(), Source.HEARD);
    }
    return new ClickClock(expected, extraSeconds.isPresent() ? Source.STORED : Source.UNMEASURED);
  }
}
