package neckway.follow;

import java.util.Arrays;

/** The time from note to note as the player keeps it: the median of the last few. */
final class PlayerGap {
  private static final double SHORTEST = 0.6;
  private static final double LONGEST = 1.6;

  private final double drillGapSeconds;
  private final double[] recent = new double[7];
  private int count;

  PlayerGap(double drillGapSeconds) {
    this.drillGapSeconds = drillGapSeconds;
  }

  /** Two steps in a row were so many seconds apart. */
  void heard(double seconds) {
    if (seconds > SHORTEST * drillGapSeconds && seconds < LONGEST * drillGapSeconds) {
      recent[count++ % recent.length] = seconds;
    }
  }

  double seconds() {
    if (count < 3) {
      return drillGapSeconds;
    }
    double[] sorted = Arrays.copyOf(recent, Math.min(count, recent.length));
    Arrays.sort(sorted);
    return sorted[sorted.length / 2];
  }
}
