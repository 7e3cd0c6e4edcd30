package neckway.report;

import java.util.List;

/** Where the sound around a moment comes from. */
public interface Clips {
  /** Where no recording is at hand. */
  Clips NONE = stretches -> List.of();

  /**
   * Cuts stretches of the take.
   *
   * @param stretches in the order of their beginnings
   * @return one for each, in the same order; or none at all where no recording is at hand
   */
  List<Clip> cut(List<Stretch> stretches);

  /**
   * A stretch of a take.
   *
   * @param from seconds from its first sample, 0 or more
   * @param to seconds, after {@code from}
   */
  record Stretch(double from, double to) {}

  /**
   * Its sound.
   *
   * @param sound mono, -1 to 1; empty where the take ends before it
   * @param slow the same at half speed and the same pitch
   * @param sampleRate frames a second of both
   */
  record Clip(float[] sound, float[] slow, double sampleRate) {}
}
