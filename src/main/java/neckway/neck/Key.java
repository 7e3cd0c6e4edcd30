package neckway.neck;

import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import neckway.words.Wording;

/**
 * A major or minor key: which notes its pentatonic scale has and how they are written. A minor key
 * has the notes of its relative major: F# minor those of A major.
 *
 * @param letter of the tonic, A to G
 * @param accidental of the tonic: 1 sharp, -1 flat
 * @param minor whether it is named as a minor key
 */
public record Key(char letter, int accidental, boolean minor) {
  private static final Pattern WRITTEN =
      Pattern.compile(
          "([A-Ga-g])([#♯bB♭]|[ -]?(?i:sharp|flat))?"
              + "\\s*(M|m|(?i:maj|major|min|minor))?(?i:\\s+pentatonic)?");
  private static final String LETTERS = "CDEFGAB";
  private static final int[] MAJOR = {0, 2, 4, 5, 7, 9, 11};
  private static final String[] SHARPS = "C C# D D# E F F# G G# A A# B".split(" ");
  private static final String[] FLATS = "C Db D Eb E F Gb G Ab A Bb B".split(" ");
  private static final int MOST_SIGNS = 7;

  /**
   * Reads a key such as "A major" or "F# minor", or as on a chord sheet: "Am" is minor, "A" alone
   * major. One that would need more than seven sharps or flats is named as players name it: D#
   * major becomes Eb major.
   *
   * @throws BadInput if it is not a key
   */
  public static Key parse(String name) {
    Matcher written = WRITTEN.matcher(name.strip());
    if (!written.matches()) {
      throw new BadInput(Wording.of("music.key.none", name));
    }
    char letter = Character.toUpperCase(written.group(1).charAt(0));
    int accidental = written.group(2) == null ? 0 : accidentalOf(written.group(2));
    boolean minor = written.group(3) != null && isMinor(written.group(3));
    Key key = new Key(letter, accidental, minor);
    if (Math.abs(key.signs()) <= MOST_SIGNS) {
      return key;
    }
    String[] names = key.signs() > 0 ? FLATS : SHARPS;
    String other = names[Math.floorMod(Pitch.semitonesAboveC(letter) + accidental, names.length)];
    return new Key(other.charAt(0), Pitch.accidentalOf(other.substring(1)), minor);
  }

  /**
   * The key so many semitones higher, major or minor as this one, written with the fewest sharps or
   * flats.
   */
  public Key up(int semitones) {
    int tonic = Pitch.semitonesAboveC(letter) + accidental + semitones;
    int pitchClass = Math.floorMod(tonic, SHARPS.length);
    return Stream.of(SHARPS, FLATS)
        .map(names -> names[pitchClass])
        .map(name -> new Key(name.charAt(0), Pitch.accidentalOf(name.substring(1)), minor))
        .min(Comparator.comparingInt(key -> Math.abs(key.signs())))
        .orElseThrow();
  }

  private static int accidentalOf(String written) {
    String sign = written.toLowerCase(Locale.ROOT).replace("sharp", "#").replace("flat", "b");
    return Pitch.accidentalOf(sign.replaceAll("[ -]", ""));
  }

  /** A small m alone is minor, a capital one major. */
  private static boolean isMinor(String mode) {
    return mode.equals("m") || mode.toLowerCase(Locale.ROOT).startsWith("min");
  }

  /** Pitch class, 0 for C to 11 for B, of the major tonic: of the relative major in a minor key. */
  public int majorTonic() {
    int tonic = Pitch.semitonesAboveC(letter) + accidental;
    return Math.floorMod(minor ? tonic + 3 : tonic, 12);
  }

  /** The note that the key is named after, such as Bb. */
  public String tonicName() {
    return letter + Pitch.signs(accidental);
  }

  /** Whether a pitch is the note that the key is named after, in any octave. */
  public boolean isTonic(int midi) {
    return Math.floorMod(midi - Pitch.semitonesAboveC(letter) - accidental, 12) == 0;
  }

  /** Sharps of the key signature above zero, flats below: 3 for A major, -2 for Bb major. */
  public int signs() {
    int sum = 0;
    for (int degree = 1; degree <= MAJOR.length; degree++) {
      sum += accidentalOfDegree(degree);
    }
    return sum;
  }

  /** How a pitch is written in this key; a note outside it takes the key's own kind of sign. */
  public Pitch spell(int midi) {
    Optional<Integer> degree = degree(midi);
    String name;
    if (degree.isPresent()) {
      name = letterOfDegree(degree.get()) + Pitch.signs(accidentalOfDegree(degree.get()));
    } else {
      name = (signs() < 0 ? FLATS : SHARPS)[Math.floorMod(midi, 12)];
    }
    int accidental = Pitch.accidentalOf(name.substring(1));
    return new Pitch(name.charAt(0), accidental, Math.floorDiv(midi - accidental, 12) - 1);
  }

  /** Degree of the major scale, 1 to 7; in a minor key that of its relative major. */
  public Optional<Integer> degree(int midi) {
    int above = Math.floorMod(midi - majorTonic(), 12);
    for (int i = 0; i < MAJOR.length; i++) {
      if (MAJOR[i] == above) {
        return Optional.of(i + 1);
      }
    }
    return Optional.empty();
  }

  /** Whether a pitch is one of the five notes: degrees 1, 2, 3, 5 and 6 of the major scale. */
  public boolean isPentatonic(int midi) {
    return switch (Math.floorMod(midi - majorTonic(), 12)) {
      case 0, 2, 4, 7, 9 -> true;
      default -> false;
    };
  }

  /** The next higher note of the pentatonic scale. */
  public int nextPentatonic(int midi) {
    int next = midi + 1;
    while (!isPentatonic(next)) {
      next++;
    }
    return next;
  }

  /** As players say it: "Bb major". */
  @Override
  public String toString() {
    return tonicName() + (minor ? " minor" : " major");
  }

  private char letterOfDegree(int degree) {
    int tonic = LETTERS.indexOf(letter) + (minor ? 2 : 0);
    return LETTERS.charAt((tonic + degree - 1) % LETTERS.length());
  }

  private int accidentalOfDegree(int degree) {
    int sounding = majorTonic() + MAJOR[degree - 1];
    int natural = Pitch.semitonesAboveC(letterOfDegree(degree));
    return Math.floorMod(sounding - natural + 6, 12) - 6;
  }
}
