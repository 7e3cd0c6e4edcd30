package neckway.desk.open;

import java.util.Optional;
import neckway.desk.Texts;
import neckway.drill.PlayableDrill;
import neckway.follow.Verdict;
import neckway.hear.RobustStatistics;
import neckway.log.RunLog;
import neckway.practice.RankSum;
import neckway.review.Clock;
import neckway.review.Review;
import neckway.review.ReviewedNote;

/** Holds a run against the last one of the same drill. */
final class LastTime {
  /** Beyond this chance nothing is said (the usual bound; common practice). */
  private static final double CHANCE = 0.05;

  private LastTime() {}

  /**
   * That the notes lie nearer the beat than last time, where as many are right and a test of the
   * difference bears it; else nothing. Nothing either where how early or late they are is not
   * known.
   */
  static String said(RunBook book, PlayableDrill drill, Review review) {
    Optional<String> id = book.id(review);
    if (id.isEmpty() || !RunLog.isThere(book.folder())) {
      return "";
    }
    try (RunLog log = RunLog.open(book.folder(), line -> {})) {
      return log.before(id.get()).map(last -> said(review, last.review())).orElse("");
    }
  }

  static String said(Review now, Review last) {
    double[] mine = off(now);
    double[] theirs = off(last);
    if (now.clock() != Clock.MEASURED
        || last.clock() != Clock.MEASURED
        || mine.length == 0
        || theirs.length == 0
        || now.summary().right() < last.summary().right()) {
      return "";
    }
    RankSum test = new RankSum(mine, theirs);
    if (!test.isSmaller() || test.p() >= CHANCE) {
      return "";
    }
    return Texts.of(
        "next.better",
        Math.round(RobustStatistics.median(mine)),
        Math.round(RobustStatistics.median(theirs)),
        p(test.p()));
  }

  private static String p(double p) {
    return p < 0.001 ? Texts.of("next.better.tiny") : Texts.of("next.better.p", Texts.fixed(p, 3));
  }

  /** How far the right notes are off, either way, milliseconds. */
  private static double[] off(Review review) {
    return review.notes().stream()
        .filter(n -> n.attempt() == review.reviewed() && n.verdict() == Verdict.RIGHT)
        .mapToDouble(ReviewedNote::offMs)
        .map(Math::abs)
        .toArray();
  }

  /** Whether its take is marked to be kept. */
  static boolean isMarked(RunBook book, Review review) {
    Optional<String> id = book.id(review);
    if (id.isEmpty() || !RunLog.isThere(book.folder())) {
      return false;
    }
    try (RunLog log = RunLog.open(book.folder(), line -> {})) {
      return log.isMarked(id.get());
    }
  }
}
