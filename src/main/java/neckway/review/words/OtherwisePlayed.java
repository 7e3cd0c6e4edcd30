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
    return before(
        review,
        "You played on without a pause: this is about "
            + Phrases.count(played.rounds(), "round")
            + ", where the drill has "
            + Phrases.count(asked)
            + ".");
  }

  /**
   * In place of the sentences of a review whose notes fit another drill far better.
   *
   * @param other the drill that they fit
   * @param right how many fit it
   */
  public static List<String> otherDrill(PlayableDrill other, int right, Review review) {
    String sounds = "This sounds like " + shapes(other) + " from fret " + other.start();
    return List.of(
        sounds + ". " + fits(right, review) + " that, and " + here(review) + " this drill.",
        "Name that drill to hear how you played it, or look again where this one begins.");
  }

  /**
   * In place of the sentences of a review whose notes fit the same drill in another key far better.
   * Fingers and places may have been those of the drill that was named, on a guitar tuned
   * otherwise.
   *
   * @param asked the drill that was named
   * @param other the same in the key that they fit
   * @param right how many fit it
   */
  public static List<String> otherKey(
      PlayableDrill asked, PlayableDrill other, int right, Review review) {
    int semitones = firstPitch(other) - firstPitch(asked);
    String far = Phrases.count(Math.abs(semitones), "semitone");
    String way = semitones > 0 ? "higher" : "lower";
    return List.of(
        "This sounds like "
            + other.key()
            + ", and the drill is in "
            + asked.key()
            + ". "
            + fits(right, review)
            + " the same drill "
            + far
            + " "
            + way
            + ", and "
            + here(review)
            + " this one.",
        "Name that key to hear how you played it. If your hands were where this drill has them, the"
            + " guitar is tuned "
            + far
            + " "
            + way
            + (semitones > 0 ? ", or has a capo." : "."));
  }

  private static int firstPitch(PlayableDrill drill) {
    return drill.route().steps().get(0).midi();
  }

  private static String fits(int right, Review review) {
    int all = review.notes().size();
    return right == all ? "All " + all + " notes fit" : right + " of " + all + " notes fit";
  }

  private static String here(Review review) {
    long here = review.notes().stream().filter(n -> n.verdict() == Verdict.RIGHT).count();
    return here == 0 ? "none" : Long.toString(here);
  }

  /**
   * In front of the sentences of a review that is held against another drill of a list than the one
   * that the list has for the take.
   *
   * @param asked the one that the list has
   * @param played the one that fits far better
   */
  public static List<String> otherOfList(PlayableDrill asked, PlayableDrill played, Review review) {
    return before(
        review,
        "For this take the list names "
            + asked.title()
            + ", and it sounds like "
            + played.title()
            + ", which is on the list too.",
        "What follows is about the one that it sounds like, and that is a guess.");
  }

  /**
   * In front of the sentences of a review of a take for which no drill was named.
   *
   * @param played the one of several that fits best
   */
  public static List<String> noneNamed(PlayableDrill played, Review review) {
    return before(
        review,
        "No drill is named for this take; what follows is about "
            + played.title()
            + ", which fits best, and that is a guess.");
  }

  private static List<String> before(Review review, String... first) {
    List<String> words = new ArrayList<>(List.of(first));
    words.addAll(review.summary().words());
    return words;
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
