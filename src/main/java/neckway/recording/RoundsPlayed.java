package neckway.recording;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import neckway.drill.PlayableDrill;
import neckway.neck.RouteBuilder;
import neckway.review.Review;
import neckway.review.ReviewedNote;

/**
 * Finds rounds that nobody announced: the player goes on at the bottom note, which sounds once
 * between two rounds. Held against the drill as it was asked, each is a new try whose first note is
 * left out.
 */
final class RoundsPlayed {
  /** A longer time from the bottom note to the next one is a new beginning, slots. */
  private static final double LONGEST_SLOTS = 1.6;

  private final PlayableDrill drill;
  private final Review review;

  RoundsPlayed(PlayableDrill drill, Review review) {
    this.drill = drill;
    this.review = review;
  }

  /** How often the drill was played through and gone on with, beyond what was asked. */
  Optional<PlayableDrill> drillWithAll() {
    int longest = 1;
    int here = 1;
    for (int attempt = 1; attempt < review.attempts(); attempt++) {
      here = goesOn(attempt) ? here + 1 : 1;
      longest = Math.max(longest, here);
    }
    int rounds = drill.rounds() * longest;
    return longest == 1 || rounds > RouteBuilder.MOST_ROUNDS
        ? Optional.empty()
        : Optional.of(drill.drill().withRounds(rounds).playable());
  }

  private boolean goesOn(int attempt) {
    List<ReviewedNote> before = inPlace(attempt - 1);
    List<ReviewedNote> after = inPlace(attempt);
    if (before.isEmpty() || after.isEmpty()) {
      return false;
    }
    ReviewedNote bottom = before.get(before.size() - 1);
    ReviewedNote next = after.get(0);
    boolean atTheBottom = bottom.step().getAsInt() == drill.route().steps().size() - 1;
    double wait = next.time() - bottom.time();
    return atTheBottom
        && next.step().getAsInt() == 1
        && wait < LONGEST_SLOTS * review.grid().slotSeconds();
  }

  private List<ReviewedNote> inPlace(int attempt) {
    return review.notes().stream()
        .filter(n -> n.attempt() == attempt && n.inPlace())
        .sorted(Comparator.comparingDouble(ReviewedNote::time))
        .toList();
  }
}
