package neckway.review.words;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import neckway.follow.Verdict;
import neckway.neck.Step;
import neckway.review.ReviewedNote;
import neckway.review.StepVerdict;

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
            "You began " + Phrases.times(tries) + "; the rest is about the " + standing() + "."));
    if (tries == 2) {
      said.add(Sentence.of("The first try " + came(0) + "; the second " + came(1) + "."));
    } else if (tries <= MOST_TOLD) {
      for (int t = 0; t < tries; t++) {
        said.add(Sentence.of("The " + Phrases.ordinal(t + 1) + " try " + came(t) + "."));
      }
    } else {
      said.add(Sentence.of("That try " + came(played.review().reviewed()) + "."));
    }
    return said;
  }

  private String standing() {
    int number = played.review().reviewed() + 1;
    String name = number == tries && tries > 2 ? "last" : Phrases.ordinal(number);
    if (number == tries) {
      return name + " try";
    }
    boolean asFar =
        IntStream.range(number, tries).anyMatch(later -> lastStep(later) == lastStep(number - 1));
    String why = asFar ? tries == 2 ? "the better one" : "the best one" : "which got furthest";
    return name + " try, " + why;
  }

  /** "stopped at the second string, fret 8", "went through, with one wrong note". */
  private String came(int attempt) {
    List<ReviewedNote> notes =
        played.review().notes().stream().filter(n -> n.attempt() == attempt).toList();
    int last = lastStep(attempt);
    Step step = played.step(last);
    String how =
        last == played.drill().route().steps().size() - 1
            ? "went through"
            : "stopped at the " + Phrases.spot(step.place()) + ", " + played.way(step);
    List<String> slips = new ArrayList<>();
    add(slips, count(notes, Verdict.WRONG), "wrong note");
    add(slips, leftOut(attempt), "note left out");
    add(slips, count(notes, Verdict.REPEAT), "note struck twice");
    add(slips, count(notes, Verdict.EXTRA), "note that does not belong there");
    return slips.isEmpty() ? how : how + ", with " + Phrases.list(slips);
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

  private static void add(List<String> slips, int count, String one) {
    if (count == 1) {
      slips.add(Phrases.count(1) + " " + one);
    } else if (count > 1) {
      String several = one.replaceFirst("note", "notes").replace("does not", "do not");
      slips.add(Phrases.count(count) + " " + several);
    }
  }
}
