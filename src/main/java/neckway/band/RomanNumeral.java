package neckway.band;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import neckway.band.Chord.Quality;
import neckway.neck.BadInput;
import neckway.words.Wording;

/**
 * A chord named by the degree of its root: capitals are major, small letters minor, as in handbooks
 * of harmony (from memory). Degrees are those of the major scale, or of the natural minor one where
 * the row is in minor; there bIII, bVI and bVII mean the same as III, VI and VII, since players
 * write both (common practice, no source).
 */
final class RomanNumeral {
  private static final Pattern WRITTEN =
      Pattern.compile("([b#♭♯]?)([IViv]+)(°|o|dim|\\+|aug|maj7|M7|m7b5|ø7?|7|6|sus4|sus2|5)?");
  private static final List<String> NUMERALS = List.of("I", "II", "III", "IV", "V", "VI", "VII");
  private static final int[] MAJOR = {0, 2, 4, 5, 7, 9, 11};
  private static final int[] NATURAL_MINOR = {0, 2, 3, 5, 7, 8, 10};

  private RomanNumeral() {}

  /**
   * Reads one.
   *
   * @param tonic pitch class that the degrees are counted from
   * @param minor whether they are those of the natural minor scale
   * @throws BadInput where it is none
   */
  static Chord parse(String text, int tonic, boolean minor) {
    Matcher written = WRITTEN.matcher(text);
    if (!written.matches()) {
      throw notOne(text);
    }
    String numeral = written.group(2);
    int degree = NUMERALS.indexOf(numeral.toUpperCase(java.util.Locale.ROOT));
    boolean small = numeral.equals(numeral.toLowerCase(java.util.Locale.ROOT));
    boolean capital = numeral.equals(numeral.toUpperCase(java.util.Locale.ROOT));
    if (degree < 0 || !(small || capital)) {
      throw notOne(text);
    }
    int above = above(degree, written.group(1), minor);
    Quality quality =
        quality(small, Optional.ofNullable(written.group(3)).orElse(""))
            .orElseThrow(() -> notOne(text));
    return new Chord(Math.floorMod(tonic + above, 12), quality);
  }

  private static int above(int degree, String sign, boolean minor) {
    boolean flat = sign.equals("b") || sign.equals("♭");
    boolean lowAlready = NATURAL_MINOR[degree] < MAJOR[degree];
    int natural = (minor ? NATURAL_MINOR : MAJOR)[degree];
    if (flat) {
      return minor && lowAlready ? natural : natural - 1;
    }
    return sign.isEmpty() ? natural : natural + 1;
  }

  private static Optional<Quality> quality(boolean small, String suffix) {
    return switch (suffix) {
      case "" -> Optional.of(small ? Quality.MINOR : Quality.MAJOR);
      case "7" -> Optional.of(small ? Quality.MINOR_SEVENTH : Quality.DOMINANT_SEVENTH);
      case "6" -> Optional.of(small ? Quality.MINOR_SIXTH : Quality.SIXTH);
      case "maj7", "M7" -> small ? Optional.empty() : Optional.of(Quality.MAJOR_SEVENTH);
      case "+", "aug" -> small ? Optional.empty() : Optional.of(Quality.AUGMENTED);
      case "°", "o", "dim" -> small ? Optional.of(Quality.DIMINISHED) : Optional.empty();
      case "ø", "ø7", "m7b5" -> small ? Optional.of(Quality.HALF_DIMINISHED) : Optional.empty();
      case "sus4" -> Optional.of(Quality.SUSPENDED_FOURTH);
      case "sus2" -> Optional.of(Quality.SUSPENDED_SECOND);
      case "5" -> Optional.of(Quality.FIFTH);
      default -> throw new IllegalArgumentException(Arrays.toString(new String[] {suffix}));
    };
  }

  private static BadInput notOne(String text) {
    return new BadInput(Wording.of("music.chord.none", text));
  }
}
