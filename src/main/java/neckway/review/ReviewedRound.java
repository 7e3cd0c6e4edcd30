package neckway.review;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import neckway.drill.PlayableDrill;
import neckway.follow.Verdict;
import neckway.hand.ShiftVerdict;
import neckway.hear.RobustStatistics;

/**
 * One round of the reviewed attempt.
 *
 * @param round from 0
 * @param clean whether every step was played right and nothing else, no shift was missed or made
 *     elsewhere, each landing came in time and the notes fell evenly
 * @param tempo at which it was played, beats a minute
 */
public record ReviewedRound(int round, boolean clean, double tempo) {
  /** A landing may be so late (common practice, no source): the larger of both. */
  private static final double LATE_MS = 40;

  private static final double LATE_SHARE = 0.15;

  /** The notes may spread so far (common practice, no source): the larger of both. */
  private static final double SPREAD_MS = 25;

  private static final double SPREAD_SHARE = 0.1;

  /** The rounds of a drill, played or not. */
  public static List<ReviewedRound> of(PlayableDrill drill, Review review) {
    return IntStream.range(0, drill.rounds())
        .mapToObj(
            round ->
                new ReviewedRound(
                    round, new Judge(drill, review, round).clean(), review.grid().tempo()))
        .toList();
  }

  /** Judges one round. */
  private static final class Judge {
    private final Review review;
    private final int round;
    private final int first;
    private final int last;
    private final double slotMs;

    Judge(PlayableDrill drill, Review review, int round) {
      this.review = review;
      this.round = round;
      int steps = drill.route().stepsPerRound() - 1;
      first = round * steps;
      last = first + steps;
      slotMs = 1000 * review.grid().slotSeconds();
    }

    boolean clean() {
      return review.steps().subList(first, last + 1).stream()
              .allMatch(step -> step.verdict() == StepVerdict.PLAYED)
          && rightNotes().size() == last - first + 1
          && nothingBesides()
          && review.shifts().stream().filter(s -> s.planned().round() == round).allMatch(this::kept)
          && even();
    }

    private List<ReviewedNote> rightNotes() {
      return ofAttempt(Verdict.RIGHT).stream().filter(this::inRound).toList();
    }

    private List<ReviewedNote> ofAttempt(Verdict verdict) {
      return review.notes().stream()
          .filter(n -> n.attempt() == review.reviewed() && n.verdict() == verdict)
          .toList();
    }

    private boolean inRound(ReviewedNote note) {
      return note.step().isPresent()
          && note.step().getAsInt() >= first
          && note.step().getAsInt() <= last;
    }

    private boolean nothingBesides() {
      List<ReviewedNote> right = rightNotes();
      double from = right.get(0).time();
      double to = right.get(right.size() - 1).time();
      List<ReviewedNote> besides = new ArrayList<>(ofAttempt(Verdict.EXTRA));
      besides.removeIf(n -> n.time() < from || n.time() > to);
      return besides.isEmpty() && ofAttempt(Verdict.REPEAT).stream().noneMatch(this::inRound);
    }

    private boolean kept(ReviewedShift shift) {
      return shift.verdict() != ShiftVerdict.MISSED
          && shift.verdict() != ShiftVerdict.MOVED
          && shift.lateMs().orElse(0) <= Math.max(LATE_MS, LATE_SHARE * slotMs);
    }

    private boolean even() {
      double[] off = rightNotes().stream().mapToDouble(ReviewedNote::offMs).toArray();
      return RobustStatistics.spread(off) <= Math.max(SPREAD_MS, SPREAD_SHARE * slotMs);
    }
  }
}
