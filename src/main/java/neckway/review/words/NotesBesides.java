package neckway.review.words;

import java.util.List;
import java.util.Optional;
import neckway.neck.GuitarString;
import neckway.review.ReviewedNote;
import neckway.words.Wording;

/** Notes that belong to none of the drill's, mostly open strings. */
final class NotesBesides {
  /** Common practice, no source: the run itself goes on. */
  private static final double NOTE = 0.5;

  private final Played played;

  NotesBesides(Played played) {
    this.played = played;
  }

  /** Only what sounds within the run: what is played before or after it does no harm. */
  List<Cause> causes() {
    List<ReviewedNote> stray = played.straysBetween();
    if (stray.isEmpty()) {
      return List.of();
    }
    List<Integer> steps = stray.stream().map(played::stepAt).toList();
    return List.of(new Cause(NOTE * stray.size(), steps.get(0), steps, advice(stray)));
  }

  private String advice(List<ReviewedNote> stray) {
    List<GuitarString> open =
        stray.stream().map(this::open).flatMap(Optional::stream).distinct().toList();
    long ofOpenStrings = stray.stream().filter(n -> open(n).isPresent()).count();
    if (2 * ofOpenStrings < stray.size()) {
      return Wording.of("besides.lift");
    }
    if (open.size() > 1) {
      return Wording.of("besides.mute.several");
    }
    String string = Phrases.ordinal(open.get(0));
    if (stray.stream().allMatch(this::asTheHandShifts)) {
      return Wording.of("besides.shift", string);
    }
    return stray.stream().allMatch(this::isStringJustLeft)
        ? Wording.of("besides.pulled", string)
        : Wording.of("besides.mute.one", string);
  }

  /** Whether it sounded on the string of a shift, between the note before it and the landing. */
  private boolean asTheHandShifts(ReviewedNote note) {
    int landing = played.stepAt(note) + 1;
    return isStringJustLeft(note) && played.landings().contains(landing);
  }

  /** Whether the open string is the one whose note sounded just before. */
  private boolean isStringJustLeft(ReviewedNote note) {
    return open(note).equals(Optional.of(played.step(played.stepAt(note)).place().string()));
  }

  private Optional<GuitarString> open(ReviewedNote note) {
    return played.drill().tuning().strings().stream()
        .filter(string -> played.drill().tuning().openMidi(string) == note.midi())
        .findFirst();
  }
}
