package neckway.review.words;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import neckway.drill.PlayableDrill;
import neckway.follow.Verdict;
import neckway.neck.Shape;
import neckway.review.Review;

/** Says that something else was played than the drill that was named. */
public final class OtherwisePlayed {
  private OtherwisePlayed() {}

  /**
   * In front of the sentences of a review that is held against more rounds than were asked.
   *
   * @param asked rounds of the drill that was named
   */
  public static List<String> moreRounds(int asked, PlayableDrill played, Review review) {
    List<String> words = new ArrayList<>();
    words.add(
        "You played on without a pause: this is about "
            + Phrases.count(played.rounds(), "round")
            + ", where the drill has "
            + Phrases.count(asked)
            + ".");
    words.addAll(review.summary().words());
    return words;
  }

  /**
   * In place of the sentences of a review whose notes fit another drill far better.
   *
   * @param other the drill that they fit
   * @param right how many fit it
   */
  public static List<String> otherDrill(PlayableDrill other, int right, Review review) {
    long here = review.notes().stream().filter(n -> n.verdict() == Verdict.RIGHT).count();
    String sounds = "This sounds like " + shapes(other) + " from fret " + other.start();
    int all = review.notes().size();
    String fits = right == all ? "All " + all + " notes fit" : right + " of " + all + " notes fit";
    return List.of(
        sounds + ". " + fits + " that, and " + (here == 0 ? "none" : here) + " this drill.",
        "Name that drill to hear how you played it, or look again where this one begins.");
  }

  /** "the Dorian shape into the Phrygian one". */
  private static String shapes(PlayableDrill drill) {
    List<Shape> shapes = drill.shapes();
    if (shapes.size() == 1) {
      return "the " + shapes.get(0).spoken() + " shape alone";
    }
    return "the "
        + shapes.get(0).spoken()
        + " shape into the "
        + shapes.stream()
            .skip(1)
            .map(shape -> shape.spoken() + " one")
            .collect(Collectors.joining(" and the "));
  }
}
