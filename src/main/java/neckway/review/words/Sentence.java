package neckway.review.words;

import java.util.List;

/**
 * One sentence of a review, with the notes that it tells of.
 *
 * @param part what it is for
 * @param text as it is said
 * @param steps indexes into the route's steps, in the order of the sentence, each once; empty where
 *     it tells of the run as a whole
 */
public record Sentence(Part part, String text, List<Integer> steps) {
  /** What a sentence is for. */
  public enum Part {
    /** How many notes were right. */
    SCORE,
    /** What happened, and where. */
    DETAIL,
    /** What to do next. */
    NEXT
  }

  public Sentence {
    steps = steps.stream().distinct().toList();
  }

  /** A detail of the run as a whole. */
  static Sentence of(String text) {
    return of(text, List.of());
  }

  /** A detail of some steps. */
  static Sentence of(String text, List<Integer> steps) {
    return new Sentence(Part.DETAIL, text, steps);
  }
}
