package neckway.review;

import java.util.List;
import java.util.stream.IntStream;
import neckway.drill.PlayableDrill;

/**
 * One round of the reviewed attempt.
 *
 * @param round from 0
 * @param clean whether it is one {@link CleanStretch}
 * @param tempo at which it was played, beats a minute
 */
public record ReviewedRound(int round, boolean clean, double tempo) {
  /** The rounds of a drill, played or not. */
  public static List<ReviewedRound> of(PlayableDrill drill, Review review) {
    int steps = drill.route().stepsPerRound() - 1;
    CleanStretch clean = new CleanStretch(review);
    return IntStream.range(0, drill.rounds())
        .mapToObj(
            round ->
                new ReviewedRound(
                    round, clean.is(round * steps, (round + 1) * steps), review.grid().tempo()))
        .toList();
  }
}
