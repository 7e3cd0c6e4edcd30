package neckway.neck;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import neckway.words.Wording;

/**
 * A pitch with its written name: a letter, sharps or flats, and an octave that changes at C, so
 * that C4 is the middle C and A4 is 440 Hz (ISO 16) and MIDI note 69.
 *
 * @param letter A to G
 * @param accidental sharps above zero, flats below, -2 to 2
 * @param octave the octave as written: Cb4 is the key below C4
 */
public record Pitch(char letter, int accidental, int octave) {
  /** MIDI note number of A4. */
  public static final int A4_MIDI = 69;

  /** Frequency of A4 in hertz, from ISO 16. */
  public static final double A4_HZ = 440;

  private static final Pattern WRITTEN = Pattern.compile("([A-Ga-g])(##?|♯♯?|bb?|♭♭?|)(-1|[0-9])");

  public Pitch {
    if (letter < 'A' || letter > 'G' || Math.abs(accidental) > 2) {
      throw new IllegalArgumentException("letter " + letter + ", accidental " + accidental);
    }
  }

  /**
   * Reads a name such as E2, Bb1 or F#3.
   *
   * @throws BadInput if it is not one, or lies outside MIDI's 0 to 127
   */
  public static Pitch parse(String name) {
    Matcher written = WRITTEN.matcher(name.strip());
    if (written.matches()) {
      Pitch pitch =
          new Pitch(
              Character.toUpperCase(written.group(1).charAt(0)),
              accidentalOf(written.group(2)),
              Integer.parseInt(written.group(3)));
      if (pitch.midi() >= 0 && pitch.midi() <= 127) {
        return pitch;
      }
    }
    throw new BadInput(Wording.of("music.pitch.none", name));
  }

  /** Sharps above zero, flats below, of a text such as "", "#" or "bb". */
  static int accidentalOf(String signs) {
    if (signs.isEmpty()) {
      return 0;
    }
    boolean sharp = signs.charAt(0) == '#' || signs.charAt(0) == '♯';
    return sharp ? signs.length() : -signs.length();
  }

  /** Semitones from C up to a natural letter: 0 for C, 11 for B. */
  static int semitonesAboveC(char letter) {
    return switch (letter) {
      case 'C' -> 0;
      case 'D' -> 2;
      case 'E' -> 4;
      case 'F' -> 5;
      case 'G' -> 7;
      case 'A' -> 9;
      case 'B' -> 11;
      default -> throw new IllegalArgumentException("letter " + letter);
    };
  }

  /** MIDI note number: 69 for A4, 60 for C4 (MIDI 1.0). */
  public int midi() {
    return 12 * (octave + 1) + semitonesAboveC(letter) + accidental;
  }

  /** The name without the octave, such as Bb. */
  public String note() {
    return letter + signs(accidental);
  }

  static String signs(int accidental) {
    return (accidental < 0 ? "b" : "#").repeat(Math.abs(accidental));
  }

  /** As written: E2, Bb1, F#3. */
  @Override
  public String toString() {
    return note() + octave;
  }

  /**
   * Frequency in equal temperament: 440 * 2^((midi - 69) / 12).
   *
   * @param midi MIDI note number, fractions allowed
   */
  public static double hz(double midi) {
    return A4_HZ * Math.pow(2, (midi - A4_MIDI) / 12);
  }

  /**
   * MIDI note number with its fraction: 69 + 12 log2(hz / 440).
   *
   * @param hz more than 0
   */
  public static double midiOfHz(double hz) {
    return A4_MIDI + 12 * Math.log(hz / A4_HZ) / Math.log(2);
  }
}
