package neckway.desk.open;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import neckway.practice.PlayedRound;
import neckway.practice.Progress;
import neckway.review.CleanStretch;

/**
 * A landing in the picture of one join over time.
 *
 * @param run counted from 0, in the order played
 * @param day of the run
 * @param lateMs how late it came; early is negative
 * @param limitMs how late it may come and be clean, at its tempo
 * @param clean whether the round was clean
 */
record LandingPoint(int run, LocalDate day, double lateMs, double limitMs, boolean clean) {
  /** A slot of two notes a beat, at one beat a minute, in milliseconds. */
  private static final double SLOT_MS_AT_ONE = 30_000;

  /** The landings that were heard, run by run; a run of several rounds has several. */
  static List<LandingPoint> of(Progress progress) {
    List<LandingPoint> points = new ArrayList<>();
    Instant last = null;
    int run = -1;
    for (PlayedRound round : progress.all()) {
      if (round.lateMs().isEmpty()) {
        continue;
      }
      run += round.when().equals(last) ? 0 : 1;
      last = round.when();
      points.add(
          new LandingPoint(
              run,
              round.day(),
              round.lateMs().getAsDouble(),
              CleanStretch.latestMs(SLOT_MS_AT_ONE / round.tempo()),
              round.clean()));
    }
    return points;
  }

  /** How many runs there are. */
  static int runs(List<LandingPoint> points) {
    return points.isEmpty() ? 0 : points.get(points.size() - 1).run() + 1;
  }
}
