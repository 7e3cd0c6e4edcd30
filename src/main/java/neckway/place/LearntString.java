package neckway.place;

import java.util.ArrayList;
import java.util.List;

/**
 * The stiffness of one open string from its plucks. One bad pluck of three or more does not move
 * it: the middle is a weighted median, and what lies far from it is left out before the mean is
 * taken.
 */
final class LearntString {
  /**
   * Standard deviation from note to note of ln B reduced to the open string, before anything is
   * known of the guitar. On the frets of a recorded solid-body electric it was 0.01 to 0.05, string
   * by string.
   */
  static final double USUAL_SPREAD = 0.05;

  /** No string is trusted to be more even than this. */
  static final double LEAST_SPREAD = 0.03;

  /** How many plucks the usual spread counts for. */
  static final double USUAL_WEIGHT = 3;

  /** A pluck is odd when it is this many of its own standard deviations from the middle. */
  static final double ODD_DEVIATIONS = 4;

  /** A pluck this near to the middle is not odd, however sure. */
  static final double NEVER_ODD = 0.2;

  private static final double LN_PER_FRET = Math.log(2) / 6;

  /** One pluck's ln B, reduced to the open string. */
  record Value(int fret, Pluck pluck, double lnOpen, double error) {
    static Value of(int fret, Pluck pluck) {
      Pluck.Reading reading = pluck.stiffness().orElseThrow();
      return new Value(fret, pluck, reading.lnStiffness() - LN_PER_FRET * fret, reading.error());
    }
  }

  final double lnStiffness;
  final double spread;
  final List<Value> used = new ArrayList<>();
  final List<Value> odd = new ArrayList<>();

  /**
   * @param values at least one
   */
  LearntString(List<Value> values) {
    List<Double> lns = values.stream().map(Value::lnOpen).toList();
    List<Double> weights = values.stream().map(v -> weight(v, USUAL_SPREAD)).toList();
    double middle = Middle.of(lns, weights);
    for (Value value : values) {
      double off = Math.abs(value.lnOpen() - middle);
      double own = Math.hypot(value.error(), USUAL_SPREAD);
      boolean far = off > Math.max(NEVER_ODD, ODD_DEVIATIONS * own);
      (far && values.size() > 2 ? odd : used).add(value);
    }
    double sum = 0;
    double all = 0;
    for (Value value : used) {
      double w = weight(value, USUAL_SPREAD);
      sum += w * value.lnOpen();
      all += w;
    }
    lnStiffness = sum / all;
    double squares = USUAL_WEIGHT * USUAL_SPREAD * USUAL_SPREAD;
    for (Value value : used) {
      double off = value.lnOpen() - lnStiffness;
      squares += Math.max(0, off * off - value.error() * value.error());
    }
    double even = Math.sqrt(squares / (USUAL_WEIGHT + used.size() - 1));
    spread = Math.hypot(Math.max(LEAST_SPREAD, even), Math.sqrt(1 / all));
  }

  private static double weight(Value value, double spread) {
    return 1 / (value.error() * value.error() + spread * spread);
  }
}
