package neckway.review.words;

import java.util.List;
import neckway.follow.Verdict;
import neckway.review.ReviewedNote;
import neckway.words.Wording;

/** Notes struck twice. */
final class NotesTwice {
  /** Common practice, no source: the right note, once too often. */
  private static final double NOTE = 0.5;

  private final Played played;

  NotesTwice(Played played) {
    this.played = played;
  }

  List<Cause> causes() {
    List<ReviewedNote> twice = played.notes(Verdict.REPEAT);
    if (twice.isEmpty()) {
      return List.of();
    }
    List<Integer> steps = twice.stream().map(n -> n.step().getAsInt()).distinct().sorted().toList();
    String where =
        played.byPlace(steps).size() == 1
            ? Wording.of("twice.place", Phrases.fretOnString(played.step(steps.get(0)).place()))
            : Wording.of("twice.several");
    return List.of(new Cause(NOTE * twice.size(), steps.get(0), steps, where));
  }
}
