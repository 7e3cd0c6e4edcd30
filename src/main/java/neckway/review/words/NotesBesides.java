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
    List<GuitarString> open =
        stray.stream().map(this::open).flatMap(Optional::stream).distinct().toList();
    long ofOpenStrings = stray.stream().filter(n -> open(n).isPresent()).count();
    String advice =
        2 * ofOpenStrings < stray.size()
            ? Wording.of("besides.lift")
            : open.size() == 1
                ? Wording.of("besides.mute.one", Phrases.ordinal(open.get(0)))
                : Wording.of("besides.mute.several");
    List<Integer> steps = stray.stream().map(played::stepAt).toList();
    return List.of(new Cause(NOTE * stray.size(), steps.get(0), steps, advice));
  }

  private Optional<GuitarString> open(ReviewedNote note) {
    return played.drill().tuning().strings().stream()
        .filter(string -> played.drill().tuning().openMidi(string) == note.midi())
        .findFirst();
  }
}
