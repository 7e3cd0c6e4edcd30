package neckway.hear.signal;

import java.util.Arrays;

/**
 * Takes the sample rate down by a whole number with a linear-phase low-pass (windowed sinc,
 * Blackman, cut at 0.45 of the new rate), the same for any block size and without allocation.
 *
 * <p>The loops are laid out so that the virtual machine works on several samples at once: see
 * {@link Autocorrelation}.
 */
public final class Decimator {
  /** Taps for each unit of the factor; the delay is half the taps. */
  private static final int TAPS_PER_FACTOR = 16;

  /** Samples of the lower rate that are worked out at once, at most. */
  private static final int BLOCK = 128;

  private final int factor;
  private final float[] taps;
  private final float[] held;
  private final float[] phase;
  private final float[][] rows = new float[4][BLOCK];
  private final float[] sums = new float[BLOCK];
  private int filled;

  /**
   * @param factor 1 (a wire) or more
   */
  public Decimator(int factor) {
    if (factor < 1) {
      throw new IllegalArgumentException("factor " + factor);
    }
    this.factor = factor;
    int count = factor == 1 ? 1 : TAPS_PER_FACTOR * factor + 1;
    taps = new float[count];
    held = new float[count + (BLOCK - 1) * factor];
    phase = new float[held.length / factor + 1];
    filled = count - factor;
    if (factor == 1) {
      taps[0] = 1;
      return;
    }
    double cut = 0.45 / factor;
    double sum = 0;
    for (int i = 0; i < count; i++) {
      double t = i - (count - 1) / 2.0;
      double x = 2 * Math.PI * i / (count - 1);
      double window = 0.42 - 0.5 * Math.cos(x) + 0.08 * Math.cos(2 * x);
      double sinc = t == 0 ? 2 * cut : Math.sin(2 * Math.PI * cut * t) / (Math.PI * t);
      taps[i] = (float) (window * sinc);
      sum += taps[i];
    }
    for (int i = 0; i < count; i++) {
      taps[i] /= (float) sum;
    }
  }

  /** Frames at the incoming rate by which what comes out is late. */
  int delayFrames() {
    return (taps.length - 1) / 2;
  }

  /** Samples of the lower rate that this many more at the incoming rate will make. */
  int willMake(int samples) {
    return (filled + samples - taps.length + factor) / factor;
  }

  /**
   * Takes samples and gives those of the lower rate that they complete.
   *
   * @param out room for {@link #willMake}, from index {@code at} on
   * @return how many were given
   */
  public int process(float[] samples, int from, int to, float[] out, int at) {
    int made = 0;
    for (int i = from; i < to; ) {
      int count = Math.min(to - i, held.length - filled);
      System.arraycopy(samples, i, held, filled, count);
      filled += count;
      i += count;
      made += give(out, at + made);
    }
    return made;
  }

  private int give(float[] out, int at) {
    int count = willMake(0);
    if (count <= 0) {
      return 0;
    }
    Arrays.fill(sums, 0, count, 0);
    for (int p = 0; p < Math.min(factor, taps.length); p++) {
      for (int m = 0; m * factor + p < filled; m++) {
        phase[m] = held[m * factor + p];
      }
      addPhase(p, count);
    }
    System.arraycopy(sums, 0, out, at, count);
    filled -= count * factor;
    System.arraycopy(held, count * factor, held, 0, filled);
    return count;
  }

  /** Adds what every {@code factor}th tap from one on gives, four taps at once. */
  private void addPhase(int first, int count) {
    for (int tap = first; tap < taps.length; tap += 4 * factor) {
      for (int k = 0; k < 4 && tap + k * factor < taps.length; k++) {
        System.arraycopy(phase, tap / factor + k, rows[k], 0, count);
      }
      addFour(
          sums,
          rows[0],
          rows[1],
          rows[2],
          rows[3],
          tap(tap),
          tap(tap + factor),
          tap(tap + 2 * factor),
          tap(tap + 3 * factor),
          count);
    }
  }

  private float tap(int index) {
    return index < taps.length ? taps[index] : 0;
  }

  private static void addFour(
      float[] sums,
      float[] r0,
      float[] r1,
      float[] r2,
      float[] r3,
      float a,
      float b,
      float c,
      float d,
      int count) {
    for (int m = 0; m < count; m++) {
      sums[m] += a * r0[m] + b * r1[m] + c * r2[m] + d * r3[m];
    }
  }
}
