package neckway.string.amp;

import java.util.Arrays;

/**
 * A period of a real sound as equally spaced samples, and its Fourier series: to and fro for a few
 * harmonics, by the symmetries of sine and cosine about a quarter of a period.
 */
final class PeriodSeries {
  private final int points;
  private final int half;
  private final int quarter;
  private final double[][] cos;
  private final double[][] sin;

  /** Sums for the harmonics with an even number and with an odd one: cosines, then sines. */
  private final double[][] sums = new double[4][];

  /** The sound at each sample from the period's beginning to its middle. */
  final double[] forward;

  /** The same from the period's end backward. */
  final double[] back;

  /**
   * @param points samples, a multiple of four
   * @param most the highest harmonic that is asked for, below half of them
   */
  PeriodSeries(int points, int most) {
    this.points = points;
    half = points / 2;
    quarter = points / 4;
    cos = new double[most + 1][quarter + 1];
    sin = new double[most + 1][quarter + 1];
    for (int k = 0; k <= most; k++) {
      for (int n = 0; n <= quarter; n++) {
        cos[k][n] = Math.cos(2 * Math.PI * k * n / points);
        sin[k][n] = Math.sin(2 * Math.PI * k * n / points);
      }
    }
    for (int i = 0; i < sums.length; i++) {
      sums[i] = new double[quarter + 1];
    }
    forward = new double[half + 1];
    back = new double[half + 1];
  }

  /**
   * Sets the sound to a constant plus the real part of a sum of harmonics.
   *
   * @param re their strengths' real parts, from the first harmonic
   * @param im imaginary parts
   */
  void set(double constant, double[] re, double[] im) {
    Arrays.fill(sums[0], constant);
    for (int i = 1; i < sums.length; i++) {
      Arrays.fill(sums[i], 0);
    }
    for (int first = 1; first <= 2; first++) {
      double[] even = sums[first % 2];
      double[] odd = sums[2 + first % 2];
      int k = first;
      for (; k + 2 <= re.length; k += 4) {
        addTwo(even, re[k - 1], cos[k], re[k + 1], cos[k + 2]);
        addTwo(odd, im[k - 1], sin[k], im[k + 1], sin[k + 2]);
      }
      if (k <= re.length) {
        addTwo(even, re[k - 1], cos[k], 0, cos[k]);
        addTwo(odd, im[k - 1], sin[k], 0, sin[k]);
      }
    }
    for (int n = 0; n <= quarter; n++) {
      double c = sums[0][n] + sums[1][n];
      double s = sums[2][n] + sums[3][n];
      double d = sums[0][n] - sums[1][n];
      double t = sums[3][n] - sums[2][n];
      forward[n] = c - s;
      back[n] = c + s;
      forward[half - n] = d - t;
      back[half - n] = d + t;
    }
  }

  /** Makes ready for {@link #re} and {@link #im} of the sound as it is. */
  void fold() {
    forward[0] *= 0.5;
    back[0] *= 0.5;
    forward[half] *= 0.5;
    back[half] *= 0.5;
    for (int n = 0; n <= quarter; n++) {
      double w = n == quarter ? 0.5 : 1;
      double c = w * (forward[n] + back[n]);
      double s = w * (forward[n] - back[n]);
      double d = w * (forward[half - n] + back[half - n]);
      double t = w * (forward[half - n] - back[half - n]);
      sums[0][n] = c + d;
      sums[1][n] = c - d;
      sums[2][n] = s - t;
      sums[3][n] = s + t;
    }
  }

  /** Real part of a harmonic, half of what {@link #set} takes. */
  double re(int k) {
    return DotProduct.of(sums[k % 2], 0, cos[k], 0, quarter + 1) / points;
  }

  /** Imaginary part of it. */
  double im(int k) {
    return -DotProduct.of(sums[2 + k % 2], 0, sin[k], 0, quarter + 1) / points;
  }

  private static void addTwo(double[] to, double a, double[] x, double b, double[] y) {
    for (int n = 0; n < to.length; n++) {
      to[n] += a * x[n] + b * y[n];
    }
  }
}
