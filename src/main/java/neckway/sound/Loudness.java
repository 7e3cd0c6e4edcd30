package neckway.sound;

import java.util.OptionalDouble;

/**
 * How loud sound is, as Recommendation ITU-R BS.1770-4 measures it (annex 1): a filter for how the
 * head and the ear weigh frequencies (K-weighting), the mean square of blocks of 400 ms that
 * overlap by three quarters, and two gates, so that silence does not count.
 *
 * <p>A subset: one channel, weighed as a front one, and no true peak. What is shorter than a block
 * counts as one block.
 */
public final class Loudness {
  private static final double BLOCK_SECONDS = 0.4;
  private static final double STEP_SECONDS = 0.1;
  private static final double OFFSET_DB = -0.691;
  private static final double ABSOLUTE_GATE_LKFS = -70;
  private static final double RELATIVE_GATE_LU = -10;

  private Loudness() {}

  /**
   * The integrated loudness of a channel.
   *
   * @param sound mono, -1 to 1
   * @param sampleRate frames a second
   * @return LKFS; empty where all is below the absolute gate of -70 LKFS
   */
  public static OptionalDouble integrated(float[] sound, double sampleRate) {
    double[] blocks = meanSquares(weighted(sound, sampleRate), sampleRate);
    double absolute = meanAbove(blocks, meanSquare(ABSOLUTE_GATE_LKFS));
    if (!(absolute > 0)) {
      return OptionalDouble.empty();
    }
    double relative = meanSquare(lkfs(absolute) + RELATIVE_GATE_LU);
    double gate = Math.max(meanSquare(ABSOLUTE_GATE_LKFS), relative);
    return OptionalDouble.of(lkfs(meanAbove(blocks, gate)));
  }

  private static double lkfs(double meanSquare) {
    return OFFSET_DB + 10 * Math.log10(meanSquare);
  }

  private static double meanSquare(double lkfs) {
    return Math.pow(10, (lkfs - OFFSET_DB) / 10);
  }

  /** The mean of the blocks above a gate; 0 where there is none. */
  private static double meanAbove(double[] blocks, double gate) {
    double sum = 0;
    int count = 0;
    for (double block : blocks) {
      if (block > gate) {
        sum += block;
        count++;
      }
    }
    return count == 0 ? 0 : sum / count;
  }

  private static double[] meanSquares(double[] weighted, double sampleRate) {
    int length = (int) Math.min(weighted.length, Math.round(BLOCK_SECONDS * sampleRate));
    int step = (int) Math.max(1, Math.round(STEP_SECONDS * sampleRate));
    if (length == 0) {
      return new double[0];
    }
    double[] blocks = new double[(weighted.length - length) / step + 1];
    for (int block = 0; block < blocks.length; block++) {
      double sum = 0;
      for (int i = block * step; i < block * step + length; i++) {
        sum += weighted[i] * weighted[i];
      }
      blocks[block] = sum / length;
    }
    return blocks;
  }

  private static double[] weighted(float[] sound, double sampleRate) {
    Biquad head = head(sampleRate);
    Biquad low = low(sampleRate);
    double[] weighted = new double[sound.length];
    for (int i = 0; i < sound.length; i++) {
      weighted[i] = low.next(head.next(sound[i]));
    }
    return weighted;
  }

  /**
   * The first stage, a high shelf for the head. The Recommendation gives its coefficients for 48
   * kHz only; frequency, gain and quality are those whose bilinear transform at 48 kHz gives its
   * figures to ten digits, so that other rates have the same filter.
   */
  static Biquad head(double sampleRate) {
    double k = Math.tan(Math.PI * 1681.974450955533 / sampleRate);
    double quality = 0.7071752369554196;
    double high = Math.pow(10, 3.999843853973347 / 20);
    double band = Math.pow(high, 0.4996667741545416);
    double a0 = 1 + k / quality + k * k;
    return new Biquad(
        (high + band * k / quality + k * k) / a0,
        2 * (k * k - high) / a0,
        (high - band * k / quality + k * k) / a0,
        2 * (k * k - 1) / a0,
        (1 - k / quality + k * k) / a0);
  }

  /** The second stage, a high pass; found in the same way. */
  static Biquad low(double sampleRate) {
    double k = Math.tan(Math.PI * 38.13547087602444 / sampleRate);
    double quality = 0.5003270373238773;
    double a0 = 1 + k / quality + k * k;
    return new Biquad(1, -2, 1, 2 * (k * k - 1) / a0, (1 - k / quality + k * k) / a0);
  }

  /** A filter of second order, in the transposed direct form II. */
  static final class Biquad {
    final double b0;
    final double b1;
    final double b2;
    final double a1;
    final double a2;
    private double first;
    private double second;

    Biquad(double b0, double b1, double b2, double a1, double a2) {
      this.b0 = b0;
      this.b1 = b1;
      this.b2 = b2;
      this.a1 = a1;
      this.a2 = a2;
    }

    double next(double x) {
      double y = b0 * x + first;
      first = b1 * x - a1 * y + second;
      second = b2 * x - a2 * y;
      return y;
    }
  }
}
