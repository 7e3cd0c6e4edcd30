package neckway.review.words;

import java.util.ArrayList;
import java.util.List;
import neckway.drill.PlayableDrill;
import neckway.follow.Verdict;
import neckway.neck.Shape;
import neckway.review.Review;
import neckway.words.Wording;

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
        Wording.of("other.rounds", Phrases.count(played.rounds(), "round"), Phrases.count(asked)));
  }

  /**
   * In place of the sentences of a review whose notes fit another drill far better.
   *
   * @param other the drill that they fit
   * @param right how many fit it
   */
  public static List<String> otherDrill(PlayableDrill other, int right, Review review) {
    return List.of(
        Wording.of("other.drill", shapes(other), other.start(), fits(right, review), here(review)),
        Wording.of("other.drill.then"));
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
    String way = semitones > 0 ? ".higher" : ".lower";
    return List.of(
        Wording.of(
            "other.key" + way, other.key(), asked.key(), fits(right, review), far, here(review)),
        Wording.of("other.key.then" + way, far));
  }

  private static int firstPitch(PlayableDrill drill) {
    return drill.route().steps().get(0).midi();
  }

  private static String fits(int right, Review review) {
    int all = review.notes().size();
    return right == all
        ? Wording.of("other.fits.all", all)
        : Wording.of("other.fits.some", right, all);
  }

  private static String here(Review review) {
    long here = review.notes().stream().filter(n -> n.verdict() == Verdict.RIGHT).count();
    return here == 0 ? Wording.of("other.none") : Long.toString(here);
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
        Wording.of("other.ofList", asked.spokenTitle(), played.spokenTitle()),
        Wording.of("other.ofList.then"));
  }

  /**
   * In front of the sentences of a review of a take for which no drill was named.
   *
   * @param played the one of several that fits best
   */
  public static List<String> noneNamed(PlayableDrill played, Review review) {
    return before(review, Wording.of("other.noneNamed", played.spokenTitle()));
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
      return Wording.of("other.shape", Phrases.shape(shapes.get(0)));
    }
    return shapes.stream()
        .skip(2)
        .map(Phrases::shape)
        .reduce(
            Wording.of("other.shapes", Phrases.shape(shapes.get(0)), Phrases.shape(shapes.get(1))),
            (so, next) -> Wording.of("other.shapes.more", so, next));
  }
}
