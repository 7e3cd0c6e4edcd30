package neckway.follow;

import java.util.Arrays;
import java.util.OptionalInt;
import neckway.neck.Route;

/** Finds where in a route the last notes fit in a row. */
final class Relocation {
  private static final int ROW_AFTERWARDS = 6;

  private final int[] midi;
  private final int[] recent = new int[FitGate.ROW_FROM_ANYWHERE];
  private int count;

  Relocation(Route route) {
    this.midi = route.steps().stream().mapToInt(s -> s.midi()).toArray();
  }

  void heard(int pitch) {
    System.arraycopy(recent, 1, recent, 0, recent.length - 1);
    recent[recent.length - 1] = pitch;
    count++;
  }

  /**
   * The step that the last note is, by a long row of fitting notes: the first such one from {@code
   * next} on, or one before it.
   */
  OptionalInt find(int next, boolean fittedBefore) {
    int row = fittedBefore ? ROW_AFTERWARDS : FitGate.ROW_FROM_ANYWHERE;
    if (count < row) {
      return OptionalInt.empty();
    }
    OptionalInt found = OptionalInt.empty();
    int from = recent.length - row;
    for (int last = row - 1; last < midi.length; last++) {
      if (Arrays.equals(midi, last - row + 1, last + 1, recent, from, recent.length)) {
        found = OptionalInt.of(last);
        if (last >= next) {
          return found;
        }
      }
    }
    return found;
  }

  /** A hypothesis that stands just before a step after a long row. */
  Hypothesis standingBefore(int step, int attempt) {
    Hypothesis r = Hypothesis.start();
    for (int s = step - ROW_AFTERWARDS + 1; s < step; s++) {
      r = new Hypothesis(s + 1, s + 1, attempt, 0, Double.NaN, Verdict.RIGHT, s, false, r);
    }
    return r;
  }
}
