package neckway.hear.signal;

/** Levels in decibels, many at a time. */
public final class Decibels {
  private static final float SQRT_2 = 1.41421356f;
  private static final float LOG10_OF_2 = 0.30103f;
  private static final float LOG10_OF_E = 0.43429448f;

  private Decibels() {}

  /**
   * Ten times the common logarithm, to a thousandth of a decibel and at a fraction of the time that
   * {@link Math#log10} takes: the number's exponent, and of the rest m, from 0.7 to 1.4, the series
   * ln m = 2 (t + t^3 / 3 + t^5 / 5 + ...) with t = (m - 1) / (m + 1) (Abramowitz and Stegun,
   * "Handbook of Mathematical Functions", 1964, 4.1.27).
   *
   * @param power more than 1e-37
   */
  public static float of(float power) {
    int bits = Float.floatToRawIntBits(power);
    int exponent = (bits >> 23) - 127;
    float rest = Float.intBitsToFloat(bits & 0x7fffff | 0x3f800000);
    if (rest > SQRT_2) {
      rest *= 0.5f;
      exponent++;
    }
    float t = (rest - 1) / (rest + 1);
    float square = t * t;
    float series = 2 * t * (1 + square * (1 / 3f + square * (1 / 5f)));
    return 10 * (exponent * LOG10_OF_2 + series * LOG10_OF_E);
  }
}
