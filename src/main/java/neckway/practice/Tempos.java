package neckway.practice;

import java.util.List;

/** At what tempo an exercise is played next. */
final class Tempos {
  /** A first tempo, as a share of the target (common practice, no source). */
  private static final double FIRST_SHARE = 0.6;

  /** A step up, when it was clean (common practice, no source). */
  private static final double STEP_SHARE = 0.06;

  private static final double LEAST_STEP = 4;

  /** Slower by so much, when it was not (common practice, no source). */
  private static final double SLOWER_SHARE = 0.85;

  private static final double SLOWEST = 40;

  /** After so many rounds that fail, something is changed (common practice, no source). */
  private static final int FAILED_RUNNING = 3;

  /** After so many clean ones it may be faster. */
  private static final int CLEAN_RUNNING = 2;

  private Tempos() {}

  /** The next tempo, beats a minute of two notes; whole, and no faster than the target. */
  static double next(Progress progress, double target) {
    List<PlayedRound> rounds = progress.all();
    if (rounds.isEmpty()) {
      return bounded(FIRST_SHARE * target, target);
    }
    double last = rounds.get(rounds.size() - 1).tempo();
    if (running(rounds, false) >= FAILED_RUNNING) {
      return bounded(SLOWER_SHARE * last, target);
    }
    if (running(rounds, true) >= CLEAN_RUNNING) {
      return bounded(last + Math.max(LEAST_STEP, STEP_SHARE * last), target);
    }
    return bounded(last, target);
  }

  /** Whether the last rounds all failed, so that something has to change. */
  static boolean failsAgainAndAgain(Progress progress) {
    return running(progress.all(), false) >= FAILED_RUNNING;
  }

  /** Whether it went on failing after it had been made slower. */
  static boolean failsSlowerToo(Progress progress) {
    List<PlayedRound> rounds = progress.all();
    int failed = running(rounds, false);
    if (failed < 2 * FAILED_RUNNING) {
      return false;
    }
    double first = rounds.get(rounds.size() - failed).tempo();
    return rounds.get(rounds.size() - 1).tempo() < first;
  }

  private static int running(List<PlayedRound> rounds, boolean clean) {
    int count = 0;
    for (int i = rounds.size() - 1; i >= 0 && rounds.get(i).clean() == clean; i--) {
      count++;
    }
    return count;
  }

  private static double bounded(double tempo, double target) {
    return Math.rint(Math.max(Math.min(SLOWEST, target), Math.min(target, tempo)));
  }
}
