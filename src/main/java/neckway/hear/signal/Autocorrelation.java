package neckway.hear.signal;

import java.util.Arrays;

/**
 * Sums of products of a stretch of sound with itself moved on by some lags: r(lag) = sum of x[i]
 * x[i + lag] over what the stretch and its moved copy share.
 *
 * <p>The loops are laid out so that the virtual machine works on several lags at once: it does so
 * only where all that a turn of the loop reads and writes lies whole registers apart. Four samples
 * {@value #STRIDE} frames apart are therefore taken at once, each time from a fresh copy of the
 * sound.
 */
final class Autocorrelation {
  /** Frames apart, as many as the widest register holds. */
  private static final int STRIDE = 16;

  private static final int GROUP = 4 * STRIDE;

  private float[] sound = new float[0];
  private float[] copy = new float[0];
  private float[] sums = new float[0];
  private int length;

  /** Takes the stretch {@code x[from, to)}. */
  void begin(float[] x, int from, int to) {
    length = to - from;
    if (sound.length < length + GROUP) {
      sound = new float[length + GROUP];
      copy = new float[length + GROUP];
      sums = new float[length];
    }
    System.arraycopy(x, from, sound, 0, length);
    Arrays.fill(sound, length, length + GROUP, 0);
  }

  /**
   * Works out r of the lags {@code first} to {@code end - 1} into {@code r} at the same places; 0
   * where nothing is shared.
   */
  void of(int first, int end, float[] r) {
    Arrays.fill(r, first, end, 0);
    int lags = Math.min(end, length) - first;
    if (lags <= 0) {
      return;
    }
    Arrays.fill(sums, 0, lags, 0);
    for (int group = 0; group < length; group += GROUP) {
      for (int i = group; i < Math.min(length, group + STRIDE); i++) {
        int count = Math.min(lags, length - i - first);
        if (count > 0) {
          System.arraycopy(sound, i + first, copy, 0, count + GROUP - STRIDE);
          addFour(
              sums,
              copy,
              sound[i],
              sound[i + STRIDE],
              sound[i + 2 * STRIDE],
              sound[i + 3 * STRIDE],
              count);
        }
      }
    }
    System.arraycopy(sums, 0, r, first, lags);
  }

  private static void addFour(
      float[] sums, float[] copy, float a, float b, float c, float d, int count) {
    for (int k = 0; k < count; k++) {
      sums[k] +=
          a * copy[k] + b * copy[k + STRIDE] + c * copy[k + 2 * STRIDE] + d * copy[k + 3 * STRIDE];
    }
  }
}
