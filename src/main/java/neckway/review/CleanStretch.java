package neckway.review;

import java.util.List;
import neckway.follow.Verdict;
import neckway.hand.ShiftVerdict;
import neckway.hear.RobustStatistics;

/**
 * Whether a stretch of the reviewed attempt is clean: every step played right and nothing else, no
 * shift missed or made elsewhere, each landing in time, the notes falling evenly.
 */
public final class CleanStretch {
  /** A landing may be so late (common practice, no source): the larger of both. */
  private static final double LATE_MS = 40;

  private static final double LATE_SHARE = 0.15;

  /** The notes may spread so far (common practice, no source): the larger of both. */
  private static final double SPREAD_MS = 25;

  private static final double SPREAD_SHARE = 0.1;

  private final Review review;
  private final double slotMs;

  public CleanStretch(Review review) {
    this.review = review;
    this.slotMs = 1000 * review.grid().slotSeconds();
  }

  /**
   * Whether all is clean from a step to another, the shifts that land there included.
   *
   * @param from the first step
   * @param to the last one, included
   */
  public boolean is(int from, int to) {
    return isStretch(from, to)
        && review.shifts().stream()
            .filter(s -> s.planned().landingStep() > from && s.planned().landingStep() <= to)
            .allMatch(s -> isMade(s) && inTime(s));
  }

  /** The same of the notes alone, whatever became of the shifts. */
  public boolean isStretch(int from, int to) {
    List<ReviewedNote> right = right(from, to);
    return right.size() == to - from + 1
        && review.steps().subList(from, to + 1).stream()
            .allMatch(step -> step.verdict() == StepVerdict.PLAYED)
        && nothingBesides(from, to, right)
        && isEven(right);
  }

  /** Whether a landing came in time, as far as it is known. */
  public boolean inTime(ReviewedShift shift) {
    return shift.lateMs().orElse(0) <= latestMs(slotMs);
  }

  /** How late a landing may be that is in time, milliseconds. */
  public static double latestMs(double slotMs) {
    return Math.max(LATE_MS, LATE_SHARE * slotMs);
  }

  /** How far the notes of a clean stretch may spread, milliseconds. */
  public static double widestMs(double slotMs) {
    return Math.max(SPREAD_MS, SPREAD_SHARE * slotMs);
  }

  /** Whether any note was played in place of a step of the stretch. */
  public boolean anyPlayed(int from, int to) {
    return review.notes().stream()
        .anyMatch(n -> isOfAttempt(n) && n.inPlace() && isWithin(n, from, to));
  }

  private static boolean isMade(ReviewedShift shift) {
    return shift.verdict() != ShiftVerdict.MISSED && shift.verdict() != ShiftVerdict.MOVED;
  }

  private boolean isOfAttempt(ReviewedNote note) {
    return note.attempt() == review.reviewed();
  }

  private static boolean isWithin(ReviewedNote note, int from, int to) {
    return note.step().isPresent()
        && note.step().getAsInt() >= from
        && note.step().getAsInt() <= to;
  }

  private List<ReviewedNote> right(int from, int to) {
    return review.notes().stream()
        .filter(n -> isOfAttempt(n) && n.verdict() == Verdict.RIGHT && isWithin(n, from, to))
        .toList();
  }

  private boolean nothingBesides(int from, int to, List<ReviewedNote> right) {
    double begin = right.get(0).time();
    double end = right.get(right.size() - 1).time();
    return review.notes().stream()
        .filter(this::isOfAttempt)
        .noneMatch(
            n ->
                n.verdict() == Verdict.REPEAT && isWithin(n, from, to)
                    || n.verdict() == Verdict.EXTRA && n.time() >= begin && n.time() <= end);
  }

  private boolean isEven(List<ReviewedNote> right) {
    double[] off = right.stream().mapToDouble(ReviewedNote::offMs).toArray();
    return RobustStatistics.spread(off) <= widestMs(slotMs);
  }
}
