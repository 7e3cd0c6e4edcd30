package neckway.band;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import neckway.neck.BadInput;
import neckway.neck.Key;
import neckway.words.Wording;

/**
 * Chords bar by bar, played over and over.
 *
 * @param bars each the chords in it, which share its beats
 */
public record ChordRow(List<List<Chord>> bars) {
  /** No more chords fit into a bar of four beats. */
  private static final int MOST_IN_A_BAR = 4;

  private static final int MOST_BARS = 64;

  /** A row that players know by a name. */
  private record Named(String numerals, int degreeAboveMajorTonic, boolean minor) {}

  /** Rows that are common in the trade, and a row for the colour of each shape (no source). */
  private static final Map<String, Named> NAMED = new LinkedHashMap<>();

  /** A row counted from the key's own tonic. */
  private static final int OWN_TONIC = -1;

  static {
    NAMED.put("twelve-bar", new Named("I7 I7 I7 I7 IV7 IV7 I7 I7 V7 IV7 I7 V7", OWN_TONIC, false));
    NAMED.put(
        "minor-twelve-bar", new Named("i7 i7 i7 i7 iv7 iv7 i7 i7 v7 iv7 i7 v7", OWN_TONIC, true));
    NAMED.put("two-five-one", new Named("ii7 V7 Imaj7 Imaj7", OWN_TONIC, false));
    NAMED.put("major", new Named("Imaj7 Imaj7 IV IV", 0, false));
    NAMED.put("dorian", new Named("i7 i7 IV IV", 2, false));
    NAMED.put("phrygian", new Named("i i bII bII", 4, false));
    NAMED.put("mixolydian", new Named("I I bVII IV", 7, false));
    NAMED.put("minor", new Named("i i VI VII", 9, true));
  }

  private static final String USUAL_MAJOR = "I vi IV V";
  private static final String USUAL_MINOR = "i VI VII i";

  public ChordRow {
    bars = bars.stream().map(List::copyOf).toList();
  }

  /** A row of four bars that is common in a key (common practice, no source). */
  public static ChordRow usual(Key key) {
    return parse(key.minor() ? USUAL_MINOR : USUAL_MAJOR, key);
  }

  /**
   * Reads a row: a bar each, with spaces between; chords that share a bar with a comma; or the name
   * of a known row. The degrees are those of the key; those of {@code dorian} and the other modes
   * are counted from the lowest note of that shape.
   *
   * @throws BadInput naming what is wrong
   */
  public static ChordRow parse(String text, Key key) {
    Named named = NAMED.get(text.strip().toLowerCase(Locale.ROOT));
    if (named != null) {
      return row(named.numerals(), tonic(named, key), named.minor());
    }
    if (text.isBlank()) {
      throw new BadInput(Wording.of("music.chords.none", names()));
    }
    return row(text.strip(), tonic(key), key.minor());
  }

  private static int tonic(Named named, Key key) {
    return named.degreeAboveMajorTonic() == OWN_TONIC
        ? tonic(key)
        : (key.majorTonic() + named.degreeAboveMajorTonic()) % 12;
  }

  private static int tonic(Key key) {
    return key.minor() ? (key.majorTonic() + 9) % 12 : key.majorTonic();
  }

  private static ChordRow row(String numerals, int tonic, boolean minor) {
    List<List<Chord>> bars = new ArrayList<>();
    for (String bar : numerals.split("[\\s|]+")) {
      if (bar.isEmpty()) {
        continue;
      }
      String[] chords = bar.split(",", -1);
      if (chords.length > MOST_IN_A_BAR) {
        throw new BadInput(Wording.of("music.chords.tooMany", bar));
      }
      bars.add(Arrays.stream(chords).map(c -> RomanNumeral.parse(c, tonic, minor)).toList());
    }
    if (bars.size() > MOST_BARS) {
      throw new BadInput(Wording.of("music.chords.bars", bars.size(), MOST_BARS));
    }
    return new ChordRow(bars);
  }

  /** The names of the rows that have one, with commas between. */
  public static String names() {
    return String.join(", ", NAMED.keySet());
  }

  /** The chords of a bar, 0 for the first, going round. */
  public List<Chord> bar(int number) {
    return bars.get(number % bars.size());
  }

  /** As a chord sheet has it: "| A | F#m | D | E |". */
  public String sheet(Key key) {
    return bars.stream()
        .map(bar -> bar.stream().map(chord -> name(chord, key)).collect(Collectors.joining(" ")))
        .collect(Collectors.joining(" | ", "| ", " |"));
  }

  /** A chord's name as it is written in a key. */
  public static String name(Chord chord, Key key) {
    String pitch = key.spell(60 + chord.root()).toString().replaceAll("-?\\d+$", "");
    return pitch + chord.quality().sign();
  }
}
