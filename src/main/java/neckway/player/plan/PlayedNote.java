package neckway.player.plan;

import java.util.OptionalInt;
import neckway.neck.Place;

/**
 * One note as it was played.
 *
 * @param frame the sample at which the string is released, or of a slid or hammered note the
 *     arrival
 * @param time the same in seconds from the first sample of the take
 * @param place string and fret
 * @param midi MIDI note number of that place
 * @param cents how far it is off that pitch on this guitar, the guitar's own tuning offset taken
 *     off
 * @param how how it was begun
 * @param velocity strength of the stroke, 1 is a middling one
 * @param kind what it is to the route
 * @param step the step it belongs to; empty for an extra note
 * @param attempt from 0
 * @param slideFrom the fret from which the hand slid here, also before a new pluck
 */
public record PlayedNote(
    long frame,
    double time,
    Place place,
    int midi,
    double cents,
    How how,
    double velocity,
    Kind kind,
    OptionalInt step,
    int attempt,
    OptionalInt slideFrom) {

  /** How a note is begun. */
  public enum How {
    PLUCK,
    HAMMER,
    PULL,
    SLIDE
  }

  /** What a note is to the route. */
  public enum Kind {
    RIGHT,
    WRONG,
    REPEAT,
    EXTRA
  }
}
