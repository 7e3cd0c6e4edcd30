package neckway.place;

import java.util.ArrayList;
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
  static double of(List<Double> values) {
    List<Double> sorted = new ArrayList<>(values);
    Collections.sort(sorted);
    int n = sorted.size();
    return (sorted.get((n - 1) / 2) + sorted.get(n / 2)) / 2;
  }

  /**
   * The value with half of the weight below it, taken linearly between values whose weights'
   * middles lie on either side of the half.
   *
   * @param values at least one
   * @param weights as many, above 0
   */
  static double of(List<Double> values, List<Double> weights) {
    List<Integer> order = new ArrayList<>();
    double all = 0;
    for (int i = 0; i < values.size(); i++) {
      order.add(i);
      all += weights.get(i);
    }
    order.sort((a, b) -> Double.compare(values.get(a), values.get(b)));
    double below = 0;
    double lastMiddle = 0;
    double lastValue = 0;
    for (int n = 0; n < order.size(); n++) {
      int i = order.get(n);
      double middle = below + weights.get(i) / 2;
      if (middle >= all / 2) {
        double share = n == 0 ? 1 : (all / 2 - lastMiddle) / (middle - lastMiddle);
        return n == 0 ? values.get(i) : lastValue + share * (values.get(i) - lastValue);
      }
      below += weights.get(i);
      lastMiddle = middle;
      lastValue = values.get(i);
    }
    return lastValue;
  }
}
