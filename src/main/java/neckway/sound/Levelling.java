package neckway.sound;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.OptionalDouble;

/**
 * Brings sound to the one loudness at which everything is played: by its integrated loudness, not
 * by its peak. Peaks that would then be too high are turned down for a moment around them, smoothly
 * and ahead of time, so that nothing is ever cut off.
 */
public final class Levelling {
  /**
   * The loudness of what is played with the volume full: that of a programme in Recommendation EBU
   * R 128. The room that it leaves for peaks holds a plucked string's.
   */
  public static final double TARGET_LKFS = -23;

  /** No sample is louder than this, -1 dB of full scale: EBU R 128's highest permitted peak. */
  public static final double CEILING = 0.891;

  /**
   * The peak of a click beside a guitar at the target: about 4 dB under the peaks of the guitar, as
   * "Hear it" has had it.
   */
  public static final double CLICK_PEAK = 0.2;

  /** What is so quiet that it needs more than this is no playing but the noise under it. */
  static final double MOST_GAIN_DB = 40;

  /** A knock that is turned down takes loudness with it, so it is measured again after that. */
  private static final int MOST_PASSES = 5;

  private static final double NEAR_LU = 0.1;
  private static final double AHEAD_SECONDS = 0.005;

  private Levelling() {}

  /**
   * The same sound at the target; what is silent stays as it is.
   *
   * @param sound mono
   * @param sampleRate frames a second
   */
  public static float[] levelled(float[] sound, double sampleRate) {
    float[] level = limited(sound, sampleRate);
    double db = 0;
    for (int pass = 0; pass < MOST_PASSES; pass++) {
      OptionalDouble loudness = Loudness.integrated(level, sampleRate);
      double next = Math.min(MOST_GAIN_DB, db + TARGET_LKFS - loudness.orElse(TARGET_LKFS));
      if (Math.abs(next - db) < NEAR_LU) {
        break;
      }
      db = next;
      level = limited(turned(sound, db), sampleRate);
    }
    return level;
  }

  private static float[] turned(float[] sound, double db) {
    float gain = (float) Math.pow(10, db / 20);
    float[] turned = new float[sound.length];
    for (int i = 0; i < sound.length; i++) {
      turned[i] = gain * sound[i];
    }
    return turned;
  }

  /**
   * A guitar at the target with a click beside it in proportion.
   *
   * @param click as loud as it can be: its gain is {@link ClickTrack#MAX_GAIN}
   */
  public static float[] withClick(float[] guitar, ClickTrack click, double sampleRate) {
    float[] both = new float[guitar.length];
    click.fill(0, both);
    float[] level = levelled(guitar, sampleRate);
    float share = (float) (CLICK_PEAK / ClickTrack.MAX_GAIN);
    for (int i = 0; i < both.length; i++) {
      both[i] = share * both[i] + level[i];
    }
    return limited(both, sampleRate);
  }

  /** The sound with every peak brought under the ceiling. */
  static float[] limited(float[] sound, double sampleRate) {
    double[] gain = new double[sound.length];
    boolean tooHigh = false;
    for (int i = 0; i < sound.length; i++) {
      gain[i] = Math.min(1, CEILING / Math.max(CEILING, Math.abs(sound[i])));
      tooHigh |= gain[i] < 1;
    }
    if (!tooHigh) {
      return sound;
    }
    int ahead = (int) (AHEAD_SECONDS * sampleRate);
    // the least gain all around, then its mean: each gain averaged is that of a stretch that holds
    // the sample, so the mean is no more than the sample needs
    double[] smooth = mean(least(gain, ahead), ahead);
    float[] limited = new float[sound.length];
    for (int i = 0; i < sound.length; i++) {
      limited[i] = (float) (smooth[i] * sound[i]);
    }
    return limited;
  }

  /** The least of each value and its neighbours on both sides. */
  private static double[] least(double[] values, int aside) {
    double[] least = new double[values.length];
    Deque<Integer> rising = new ArrayDeque<>();
    for (int i = 0; i < values.length + aside; i++) {
      if (i < values.length) {
        while (!rising.isEmpty() && values[rising.peekLast()] >= values[i]) {
          rising.removeLast();
        }
        rising.addLast(i);
      }
      int middle = i - aside;
      if (middle >= 0) {
        while (rising.peekFirst() < middle - aside) {
          rising.removeFirst();
        }
        least[middle] = values[rising.peekFirst()];
      }
    }
    return least;
  }

  /** The mean of each value and its neighbours on both sides. */
  private static double[] mean(double[] values, int aside) {
    double[] sums = new double[values.length + 1];
    for (int i = 0; i < values.length; i++) {
      sums[i + 1] = sums[i] + values[i];
    }
    double[] mean = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      int from = Math.max(0, i - aside);
      int to = Math.min(values.length, i + aside + 1);
      mean[i] = (sums[to] - sums[from]) / (to - from);
    }
    return mean;
  }
}
