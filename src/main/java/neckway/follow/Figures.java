package neckway.follow;

import java.util.Arrays;

/** Robust figures of a few numbers. */
final class Figures {
  /** Makes a median absolute deviation comparable with a standard deviation of normal noise. */
  private static final double TO_SPREAD = 1.4826;

  private Figures() {}

  /** The middle one, or the mean of the middle two; NaN of none. */
  static double median(double[] values) {
    if (values.length == 0) {
      return Double.NaN;
    }
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int half = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
  }

  /** 1.4826 times the median distance from the median; NaN of none. */
  static double spread(double[] values) {
    double middle = median(values);
    return TO_SPREAD * median(Arrays.stream(values).map(v -> Math.abs(v - middle)).toArray());
  }
}
