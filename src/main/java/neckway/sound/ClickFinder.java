package neckway.sound;

import java.util.Arrays;
import java.util.OptionalDouble;
import neckway.hear.RobustStatistics;

/** Finds our own clicks in captured sound by their matched filter. */
final class ClickFinder {
  /**
   * Share of a stretch's energy that must be the click's own shape: noise and strings stay far
   * below.
   */
  static final double LEAST_LIKENESS = 0.35;

  private ClickFinder() {}

  /**
   * Where a click starts.
   *
   * @param sound what was captured
   * @param length how much of it
   * @param expectedFrame where it is looked for
   * @param withinFrames how far around
   * @param click its shape
   * @return frame of its start with its fraction; empty where none is heard
   */
  static OptionalDouble find(
      float[] sound, int length, double expectedFrame, double withinFrames, float[] click) {
    int from = (int) Math.max(0, Math.ceil(expectedFrame - withinFrames));
    int to = (int) Math.min(length - click.length - 1, expectedFrame + withinFrames);
    if (to - from < 2) {
      return OptionalDouble.empty();
    }
    double clickEnergy = energy(click, 0, click.length);
    double[] match = new double[to - from + 1];
    int best = 0;
    for (int at = from; at <= to; at++) {
      double sum = 0;
      for (int i = 0; i < click.length; i++) {
        sum += click[i] * sound[at + i];
      }
      match[at - from] = Math.abs(sum);
      best = match[at - from] > match[best] ? at - from : best;
    }
    double own = energy(sound, from + best, click.length) * clickEnergy;
    if (own == 0 || match[best] * match[best] / own < LEAST_LIKENESS) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(from + best + fraction(match, best));
  }

  private static double fraction(double[] y, int i) {
    if (i == 0 || i == y.length - 1) {
      return 0;
    }
    double curve = y[i - 1] - 2 * y[i] + y[i + 1];
    return curve == 0 ? 0 : 0.5 * (y[i - 1] - y[i + 1]) / curve;
  }

  private static double energy(float[] x, int from, int length) {
    double sum = 0;
    for (int i = from; i < from + length; i++) {
      sum += (double) x[i] * x[i];
    }
    return sum;
  }

  /**
   * The offset of a whole track: input frame less output frame, by the clicks heard.
   *
   * @param track what was played
   * @param clicks how many of its clicks lie within the sound
   * @param expectedOffset where to look, frames
   * @param withinFrames how far around, less than half a beat
   */
  static Heard offset(
      float[] sound,
      int length,
      ClickTrack track,
      int clicks,
      double expectedOffset,
      double withinFrames) {
    double[] offsets = new double[clicks];
    int found = 0;
    for (int click = 0; click < clicks; click++) {
      double played = Math.round(track.clickFrame(click));
      OptionalDouble at =
          find(sound, length, played + expectedOffset, withinFrames, track.sound(click));
      if (at.isPresent()) {
        offsets[found++] = at.getAsDouble() - played;
      }
    }
    double[] sorted = Arrays.copyOf(offsets, found);
    Arrays.sort(sorted);
    return new Heard(sorted);
  }

  /**
   * Offsets of the clicks that were heard, sorted, frames.
   *
   * @param sorted one for each click
   */
  record Heard(double[] sorted) {
    int count() {
      return sorted.length;
    }

    /** The median; needs at least one. */
    double median() {
      return RobustStatistics.median(sorted);
    }

    /** Median distance from the median; needs at least one. */
    double spread() {
      double middle = median();
      return RobustStatistics.median(
          Arrays.stream(sorted).map(offset -> Math.abs(offset - middle)).toArray());
    }
  }
}
