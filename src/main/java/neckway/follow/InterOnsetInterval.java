package neckway.follow;

import java.util.Arrays;
import neckway.hear.RobustStatistics;

/** The time from note to note as the player keeps it: the median of the last few. */
final class InterOnsetInterval {
  private static final double SHORTEST = 0.6;
  private static final double LONGEST = 1.6;
  private static final int FEWEST = 3;

  private final double slotSeconds;
  private final double[] recent = new double[7];
  private int count;
  private double seconds;

  InterOnsetInterval(double slotSeconds) {
    this.slotSeconds = slotSeconds;
    this.seconds = slotSeconds;
  }

  /** Two steps in a row were so many seconds apart. */
  void heard(double seconds) {
    if (seconds > SHORTEST * slotSeconds && seconds < LONGEST * slotSeconds) {
      recent[count++ % recent.length] = seconds;
      this.seconds = count < FEWEST ? slotSeconds : middle();
    }
  }

  double seconds() {
    return seconds;
  }

  private double middle() {
    return RobustStatistics.median(Arrays.copyOf(recent, Math.min(count, recent.length)));
  }
}
