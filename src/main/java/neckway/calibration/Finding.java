package neckway.calibration;

import java.util.Optional;
import neckway.neck.GuitarString;

/**
 * Something to know of a calibration take that could be used all the same.
 *
 * @param kind what
 * @param string on which string; empty: on the guitar as a whole
 * @param words one sentence for the player
 */
public record Finding(Kind kind, Optional<GuitarString> string, String words) {
  /** What may be found. */
  public enum Kind {
    /** A place of the sequence was not heard. */
    LEFT_OUT,
    /** A place, or a whole string, was plucked more than once. */
    TWICE,
    /** Another fret sounded than the one asked for. */
    WRONG_FRET,
    /** Notes that belong to no place. */
    STRAY,
    /** A string is out of tune with the rest. */
    STRING_OFF,
    /** The whole guitar is off A4 = 440 Hz. */
    GUITAR_OFF,
    /** A pluck that says something else than the others on its string was left out of account. */
    ODD_PLUCK,
    /** Few plucks tell of a string, or they tell little. */
    UNSURE,
    /** Two neighbours with the same pitch sound alike. */
    ALIKE
  }
}
