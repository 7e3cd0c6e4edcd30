package neckway.bench;

import java.util.OptionalInt;
import neckway.player.plan.PlayedNote.Kind;

/**
 * A note that is in a take.
 *
 * @param time onset in seconds from the first sample (of a slid or hammered one, the arrival)
 * @param midi MIDI note number that was meant by the place fretted
 * @param string as players number them
 * @param fret 0 for the open string
 * @param kind what it is to the route
 * @param step the step it belongs to; empty for an extra note
 * @param note how it sounds, in a few words, for the list of errors
 */
public record TrueNote(
    double time, int midi, int string, int fret, Kind kind, OptionalInt step, String note) {
  /** A step of a route played as it should be. */
  static TrueNote right(double time, neckway.neck.Step step, String note) {
    return new TrueNote(
        time,
        step.midi(),
        step.place().string().number(),
        step.place().fret(),
        Kind.RIGHT,
        OptionalInt.of(step.index()),
        note);
  }
}
