package neckway.follow;

import java.util.OptionalInt;
import neckway.hear.HeardNote;

/**
 * A verdict, given once and kept.
 *
 * @param note the note as heard
 * @param verdict what it was
 * @param step index into the route's steps; empty for an extra note
 * @param attempt from 0
 * @param decided seconds of the take that had been heard when this was said
 */
public record NoteVerdict(
    HeardNote note, Verdict verdict, OptionalInt step, int attempt, double decided) {
  /** Whether it stands in the place of a step: right or wrong. */
  public boolean inPlace() {
    return verdict.inPlace();
  }

  /** The same of a note whose pitch has since come to be known more exactly. */
  public NoteVerdict withPitch(double pitch) {
    return new NoteVerdict(note.withPitch(pitch), verdict, step, attempt, decided);
  }
}
