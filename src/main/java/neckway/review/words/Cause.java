package neckway.review.words;

import java.util.List;

/**
 * Something that spoilt notes of a take.
 *
 * @param cost how much, in notes played wrong: that of one is 1
 * @param step index of the step where it was met first; 0 where it is of the run as a whole
 * @param steps indexes of the steps to go to; empty where it is of the run as a whole
 * @param advice how to work on it: what follows "First: "
 */
record Cause(double cost, int step, List<Integer> steps, String advice) {
  /** One of the run as a whole. */
  static Cause ofTheWhole(double cost, String advice) {
    return new Cause(cost, 0, List.of(), advice);
  }
}
