package neckway.review.words;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import neckway.words.Wording;

/**
 * What to work on first: the way to mend what cost most in the take, or after a clean run the next
 * step. Each cause has a class that knows what it costs and how it is worked on. The costs say what
 * a teacher would take first (common practice, no source).
 */
final class Advice {
  private static final String FIRST = "advice.first";
  private static final String NEXT = "advice.next";

  private final Played played;

  Advice(Played played) {
    this.played = played;
  }

  /** One sentence, for a take in which something was played. */
  Sentence sentence() {
    return heaviest()
        .map(cause -> next(Wording.of(FIRST, cause.advice()), cause.steps()))
        .orElseGet(() -> next(Wording.of(NEXT, new NextStep(played).advice()), List.of()));
  }

  /** Whether a sentence is one of these, in any language. */
  static boolean isOne(String sentence) {
    return Wording.begins(sentence, FIRST) || Wording.begins(sentence, NEXT);
  }

  private static Sentence next(String text, List<Integer> steps) {
    return new Sentence(Sentence.Part.NEXT, text, steps);
  }

  /** What cost most; of equals what came first. */
  Optional<Cause> heaviest() {
    return Stream.of(
            new SpoiltNotes(played).causes(),
            new ShiftsMissed(played).causes(),
            new ShiftsElsewhere(played).causes(),
            new LandingsLate(played).causes(),
            new NotesTwice(played).causes(),
            new NotesBesides(played).causes(),
            new Waits(played).causes(),
            new AfterTheShift(played).causes(),
            new HeardTempo(played).causes(),
            new SwingKept(played).causes(),
            new UnevenTime(played).causes(),
            new Leaning(played).causes(),
            new LateStart(played).causes(),
            new StoppedEarly(played).causes())
        .flatMap(List::stream)
        .min(Comparator.comparingDouble((Cause c) -> -c.cost()).thenComparingInt(Cause::step));
  }
}
