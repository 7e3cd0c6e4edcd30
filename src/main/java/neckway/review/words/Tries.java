package neckway.review.words;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import neckway.follow.Verdict;
import neckway.neck.Step;
import neckway.review.ReviewedNote;
import neckway.review.StepVerdict;
import neckway.words.Wording;

/** Says how often the player began, how far each try went, and which one the rest is about. */
final class Tries {
  private static final int MOST_TOLD = 4;

  private final Played played;
  private final int tries;

  Tries(Played played) {
    this.played = played;
    this.tries = played.review().attempts();
  }

  List<Sentence> sentences() {
    if (tries < 2) {
      return List.of();
    }
    List<Sentence> said = new ArrayList<>();
    said.add(
        Sentence.of(
            Wording.of(standing(), Wording.times(tries), ordinal(played.review().reviewed() + 1))));
    if (tries == 2) {
      said.add(Sentence.of(Wording.of("tries.two", came(0), came(1))));
    } else if (tries <= MOST_TOLD) {
      for (int t = 0; t < tries; t++) {
        said.add(Sentence.of(Wording.of("tries.each", Phrases.ordinal(t + 1), came(t))));
      }
    } else {
      said.add(Sentence.of(Wording.of("tries.that", came(played.review().reviewed()))));
    }
    return said;
  }

  /** The key of the sentence that says which one the rest is about. */
  private String standing() {
    int number = played.review().reviewed() + 1;
    if (number == tries) {
      return tries > 2 ? "tries.last" : "tries.second";
    }
    boolean asFar =
        IntStream.range(number, tries).anyMatch(later -> lastStep(later) == lastStep(number - 1));
    String key = asFar ? tries == 2 ? "tries.better" : "tries.best" : "tries.furthest";
    return Wording.isOrdinalInWords(number) ? key : key + ".figures";
  }

  private static String ordinal(int number) {
    return Wording.isOrdinalInWords(number) ? Wording.ordinal(number) : Integer.toString(number);
  }

  /** "stopped at fret 8 on the second string", "went through, with one wrong note". */
  private String came(int attempt) {
    List<ReviewedNote> notes =
        played.review().notes().stream().filter(n -> n.attempt() == attempt).toList();
    int last = lastStep(attempt);
    Step step = played.step(last);
    String how =
        last == played.drill().route().steps().size() - 1
            ? Wording.of("tries.through")
            : Wording.of(
                Phrases.at("tries.stopped", step.place()),
                step.place().fret(),
                Phrases.ordinal(step.place().string()),
                played.way(step));
    List<String> slips = new ArrayList<>();
    add(slips, count(notes, Verdict.WRONG), "tries.wrong");
    add(slips, leftOut(attempt), "tries.leftOut");
    add(slips, count(notes, Verdict.REPEAT), "tries.twice");
    add(slips, count(notes, Verdict.EXTRA), "tries.stray");
    return slips.isEmpty() ? how : Wording.of("tries.with", how, Wording.list(slips));
  }

  private int lastStep(int attempt) {
    return played.review().notes().stream()
        .filter(n -> n.attempt() == attempt && n.inPlace())
        .mapToInt(n -> n.step().getAsInt())
        .max()
        .orElse(0);
  }

  /** Known of the try that the review is of; of another one a note may have been unclear. */
  private int leftOut(int attempt) {
    return attempt == played.review().reviewed() ? played.steps(StepVerdict.SKIPPED).size() : 0;
  }

  private static int count(List<ReviewedNote> notes, Verdict verdict) {
    return (int) notes.stream().filter(n -> n.verdict() == verdict).count();
  }

  private static void add(List<String> slips, int count, String key) {
    if (count > 0) {
      slips.add(Wording.counted(key, count, Phrases.count(count)));
    }
  }
}
