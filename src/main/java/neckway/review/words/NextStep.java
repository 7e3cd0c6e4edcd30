package neckway.review.words;

import java.util.Optional;
import neckway.drill.PlayableDrill;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.Join;
import neckway.neck.PlacedNote;
import neckway.neck.PlannedShift;
import neckway.neck.Shape;
import neckway.words.Wording;

/** What to play after a clean run: faster, on another string, or one shape further. */
final class NextStep {
  /** At this tempo of two notes a beat a shift is no longer slow (common practice, no source). */
  private static final double SLOW_BELOW = 100;

  private static final int USUAL_NOTES_PER_BEAT = 2;

  /** A step up in tempo, beats a minute (common practice, no source). */
  private static final double STEP_SHARE = 0.06;

  private static final long LEAST_STEP = 4;
  private static final long MOST_STEP = 8;
  private static final int MOST_SHAPES = 5;

  private final PlayableDrill drill;
  private final double tempo;

  NextStep(Played played) {
    this.drill = played.drill();
    this.tempo = played.review().grid().tempo();
  }

  /** What follows "Next: ". */
  String advice() {
    boolean severalRounds = drill.rounds() > 1;
    if (drill.shapes().size() == 1) {
      return furtherUp().map(this::joined).orElseGet(this::faster);
    }
    if (slow()) {
      return severalRounds ? onAnotherString().orElseGet(this::faster) : faster();
    }
    Optional<String> further = severalRounds ? furtherUp().map(this::joined) : Optional.empty();
    return further.or(this::onAnotherString).orElseGet(this::faster);
  }

  private boolean slow() {
    return tempo * drill.pulse().notesPerBeat() / USUAL_NOTES_PER_BEAT < SLOW_BELOW;
  }

  private String faster() {
    long now = Math.round(tempo);
    long step = Math.max(LEAST_STEP, Math.min(MOST_STEP, Math.round(STEP_SHARE * now)));
    return Wording.of("next.faster", now + step);
  }

  /** The cleanest other string for the first shift, as low as the next shift up allows. */
  private Optional<String> onAnotherString() {
    PlannedShift first = drill.route().shifts().get(0);
    int highest =
        drill.route().shifts().stream()
            .skip(1)
            .limit(1)
            .filter(next -> next.direction() == Direction.UP)
            .mapToInt(next -> next.string().number())
            .findFirst()
            .orElse(1);
    return drill.pairs().get(first.pair()).stream()
        .map(Join::string)
        .filter(string -> !string.equals(first.string()) && string.number() >= highest)
        .findFirst()
        .map(string -> Wording.of("next.string", Phrases.ordinal(string)));
  }

  /** The shape above the highest one, where it is still on the neck. */
  private Optional<Shape> furtherUp() {
    return drill.shapes().size() < MOST_SHAPES && above()
        ? Optional.of(highest().next())
        : Optional.empty();
  }

  /** The next shape has on each string this one's second note and the note after that. */
  private boolean above() {
    for (GuitarString string : drill.tuning().strings()) {
      PlacedNote second = drill.chain().get(drill.chain().size() - 1).second(string);
      int next = drill.key().nextPentatonic(second.midi());
      if (next - drill.tuning().openMidi(string) > drill.frets()) {
        return false;
      }
    }
    return true;
  }

  private Shape highest() {
    return drill.shapes().get(drill.shapes().size() - 1);
  }

  private String joined(Shape next) {
    return Wording.of("next.join", Phrases.shape(highest()), Phrases.shape(next));
  }
}
