package neckway.string.amp;

/** The sum of the products of two rows of numbers, in four sums that do not wait for each other. */
final class DotProduct {
  private DotProduct() {}

  /**
   * Works it out.
   *
   * @param from index of the first number used of {@code x}
   * @param other index of the first used of {@code y}
   * @param count how many of each are used
   */
  static double of(double[] x, int from, double[] y, int other, int count) {
    double a = 0;
    double b = 0;
    double c = 0;
    double d = 0;
    int i = 0;
    for (; i + 3 < count; i += 4) {
      a += x[from + i] * y[other + i];
      b += x[from + i + 1] * y[other + i + 1];
      c += x[from + i + 2] * y[other + i + 2];
      d += x[from + i + 3] * y[other + i + 3];
    }
    for (; i < count; i++) {
      a += x[from + i] * y[other + i];
    }
    return a + b + (c + d);
  }
}
