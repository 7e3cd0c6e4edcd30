package neckway.hear;

import java.util.Arrays;
import java.util.Collection;

/** Figures of a few numbers that one bad number does not move. */
public final class RobustStatistics {
  /** Makes a median absolute deviation comparable with a standard deviation of normal noise. */
  private static final double TO_SPREAD = 1.4826;

  private RobustStatistics() {}

  /**
   * The median: the middle one, or the mean of the middle two.
   *
   * @param values in any order; left as they are
   * @return NaN of none
   */
  public static double median(double... values) {
    if (values.length == 0) {
      return Double.NaN;
    }
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int half = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
  }

  /** The same. */
  public static double median(Collection<Double> values) {
    return median(values.stream().mapToDouble(Double::doubleValue).toArray());
  }

  /**
   * How far the values spread: 1.4826 times the median distance from the median, which for normal
   * noise is its standard deviation.
   *
   * @return NaN of none
   */
  public static double spread(double... values) {
    double middle = median(values);
    return TO_SPREAD * median(Arrays.stream(values).map(v -> Math.abs(v - middle)).toArray());
  }
}
