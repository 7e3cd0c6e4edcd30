package neckway.review.words;

import java.util.ArrayList;
import java.util.List;
import neckway.follow.Verdict;
import neckway.neck.Step;
import neckway.review.ReviewedNote;

/** Says how often the player began, how far each try went, and which one the rest is about. */
final class Tries {
  private static final int MOST_TOLD = 4;

  private final Played played;
  private final int tries;

  Tries(Played played) {
    this.played = played;
    this.tries = played.review().attempts();
  }

  List<String> sentences() {
    if (tries < 2) {
      return List.of();
    }
    List<String> said = new ArrayList<>();
    said.add(
        "You began " + Phrases.times(tries) + "; the rest is about the " + standing() + " try.");
    if (tries == 2) {
      said.add("The first try " + came(0) + "; the second " + came(1) + ".");
    } else if (tries <= MOST_TOLD) {
      for (int t = 0; t < tries; t++) {
        said.add("The " + Phrases.ordinal(t + 1) + " try " + came(t) + ".");
      }
    } else {
      said.add("That try " + came(played.review().reviewed()) + ".");
    }
    return said;
  }

  private String standing() {
    int number = played.review().reviewed() + 1;
    if (number == tries && tries > 2) {
      return "last";
    }
    return Phrases.ordinal(number);
  }

  /** "stopped at the second string, fret 8", "went through, with one wrong note". */
  private String came(int attempt) {
    List<ReviewedNote> notes =
        played.review().notes().stream().filter(n -> n.attempt() == attempt).toList();
    int last =
        notes.stream()
            .filter(ReviewedNote::inPlace)
            .mapToInt(n -> n.step().getAsInt())
            .max()
            .orElse(0);
    Step step = played.step(last);
    String how =
        last == played.drill().route().steps().size() - 1
            ? "went through"
            : "stopped at the " + Phrases.spot(step.place()) + ", " + played.way(step);
    int wrong = (int) notes.stream().filter(n -> n.verdict() == Verdict.WRONG).count();
    return how + (wrong == 0 ? "" : ", with " + Phrases.count(wrong, "wrong note"));
  }
}
