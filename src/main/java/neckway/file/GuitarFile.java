package neckway.file;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import neckway.neck.BadInput;
import neckway.neck.GuitarString;
import neckway.neck.Pitch;
import neckway.neck.Tuning;
import neckway.string.GuitarProfile;
import neckway.string.StringProfile;
import neckway.string.Telling;
import neckway.words.Wording;

/**
 * Guitar profiles to and from JSON, format {@value #FORMAT}. Fields that are not known are passed
 * over.
 */
public final class GuitarFile {
  /** The format's name and version. */
  public static final String FORMAT = "neckway-guitar/1";

  /** No string is this limp. */
  static final double LEAST_STIFFNESS = 1e-8;

  /** No string is this stiff. */
  static final double MOST_STIFFNESS = 0.01;

  private static final double MOST_CENTS = 300;

  /** Says that the spread was held against how well the string's frets agree. */
  private static final String SPREAD_BY = "spreadBy";

  private static final String BY_FRETS = "frets";

  /**
   * What is added to a spread that was not, as squares, in ln B. Our own choice: as much again as
   * one string of the recorded solid body strays from note to note.
   */
  private static final double UNHELD = 0.025;

  private static final double LEAST_SPREAD = 1e-4;
  private static final double MOST_SPREAD = 10;
  private static final int MOST_PLUCKS = 1_000_000;

  private GuitarFile() {}

  /**
   * Reads a profile.
   *
   * @throws BadInput naming the file, the field and the mend
   */
  public static GuitarProfile read(Path file) {
    return fromJson(JsonFile.read(file), file.toString());
  }

  /**
   * Reads a profile for a drill.
   *
   * @param tuning the drill's
   * @throws BadInput as {@link #read(Path)}, and where the guitar is tuned otherwise
   */
  public static GuitarProfile read(Path file, Tuning tuning) {
    GuitarProfile profile = read(file);
    List<Integer> wanted = tuning.strings().stream().map(tuning::openMidi).toList();
    List<Integer> found = profile.strings().stream().map(StringProfile::openMidi).toList();
    if (!wanted.equals(found)) {
      String names =
          Tuning.of(Fields.of(JsonFile.read(file), file.toString()).texts("tuning")).toString();
      throw new BadInput(Wording.of("files.guitar.otherTuning", file, names, tuning));
    }
    return profile;
  }

  /**
   * Writes a profile beside its target and moves it into place.
   *
   * @param tuning names the open strings
   * @throws BadInput if it cannot be written
   */
  public static void write(Path file, GuitarProfile profile, Tuning tuning) {
    JsonFile.write(file, toJson(profile, tuning));
  }

  /**
   * Reads a profile.
   *
   * @param where what a complaint begins with: the file's name
   * @throws BadInput naming the field and the mend
   */
  public static GuitarProfile fromJson(JsonNode json, String where) {
    Fields fields = Fields.of(json, where);
    String format =
        fields.text("format").orElseThrow(() -> fields.missing("format", "\"" + FORMAT + "\""));
    if (!format.equals(FORMAT)) {
      throw fields.bad("format", Wording.of("files.format.guitar", format, FORMAT));
    }
    if (!fields.has("tuning")) {
      throw fields.missing("tuning", "[\"E2\", \"A2\", \"D3\", \"G3\", \"B3\", \"E4\"]");
    }
    Tuning tuning = fields.read("tuning", () -> Tuning.of(fields.texts("tuning")));
    List<StringProfile> read = fields.objects("strings", string -> string(string, tuning));
    List<StringProfile> strings = new ArrayList<>();
    for (GuitarString string : tuning.strings()) {
      List<StringProfile> those = read.stream().filter(s -> s.string().equals(string)).toList();
      if (those.size() != 1) {
        throw fields.bad(
            "strings",
            Wording.of(
                those.isEmpty() ? "files.guitar.noString" : "files.guitar.stringTwice", string));
      }
      strings.add(those.get(0));
    }
    return new GuitarProfile(strings);
  }

  private static StringProfile string(Fields fields, Tuning tuning) {
    OptionalInt number = fields.whole("string", 1, tuning.count());
    GuitarString string = new GuitarString(number.orElseThrow(() -> fields.missing("string", "3")));
    Pitch open = tuning.lowToHigh().get(tuning.count() - string.number());
    fields
        .text("open")
        .ifPresent(
            name -> {
              if (fields.read("open", () -> Pitch.parse(name)).midi() != open.midi()) {
                throw fields.bad("open", Wording.of("files.guitar.open", name, open));
              }
            });
    OptionalDouble stiffness = fields.number("stiffness", LEAST_STIFFNESS, MOST_STIFFNESS);
    OptionalDouble spread = fields.number("spread", LEAST_SPREAD, MOST_SPREAD);
    return new StringProfile(
        string,
        open.midi(),
        fields.number("centsOff", -MOST_CENTS, MOST_CENTS).orElse(0),
        Math.log(stiffness.orElseThrow(() -> fields.missing("stiffness", "1.1e-4"))),
        fields.text(SPREAD_BY).isPresent()
            ? spread.orElseThrow(() -> fields.missing("spread", "0.05"))
            : Math.hypot(spread.orElseThrow(() -> fields.missing("spread", "0.05")), UNHELD),
        fields.whole("plucks", 0, MOST_PLUCKS).orElse(0));
  }

  /** A profile as JSON. */
  public static ObjectNode toJson(GuitarProfile profile, Tuning tuning) {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    json.put("format", FORMAT);
    tuning.names().forEach(json.putArray("tuning")::add);
    ArrayNode strings = json.putArray("strings");
    for (StringProfile string : profile.strings()) {
      ObjectNode one = strings.addObject();
      one.put("string", string.string().number());
      one.put("open", tuning.names().get(tuning.count() - string.string().number()));
      one.put("centsOff", rounded(string.centsOff(), 1));
      one.put("stiffness", digits(Math.exp(string.lnStiffness())));
      one.put("spread", rounded(string.spread(), 4));
      one.put(SPREAD_BY, BY_FRETS);
      one.put("plucks", string.plucks());
    }
    ArrayNode pairs = json.putArray("pairs");
    for (StringProfile lower : profile.strings()) {
      int number = lower.string().number();
      if (number > 1) {
        double apart = profile.apart(lower.string());
        ObjectNode pair = pairs.addObject();
        pair.putArray("strings").add(number).add(number - 1);
        pair.put("apart", rounded(apart, 2));
        pair.put("told", Telling.of(apart).word());
      }
    }
    return json;
  }

  private static double rounded(double value, int decimals) {
    double scale = Math.pow(10, decimals);
    return Math.rint(value * scale) / scale;
  }

  static double digits(double value) {
    return new BigDecimal(value).round(new MathContext(6)).doubleValue();
  }
}
