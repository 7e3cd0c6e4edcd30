package neckway.place;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;

/** Medians. */
final class Middle {
  private Middle() {}

  /**
   * The median, of an even number the mean of the two in the middle.
   *
   * @param values at least one
   */
  static double of(double[] values) {
    return of(Arrays.stream(values).boxed().toList());
  }

  /**
   * The same.
   *
   * @param values at least one
   */
  static double of(List<Double> values) {
    List<Double> sorted = new ArrayList<>(values);
    Collections.sort(sorted);
    int n = sorted.size();
    return (sorted.get((n - 1) / 2) + sorted.get(n / 2)) / 2;
  }
}
