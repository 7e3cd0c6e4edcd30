package neckway.file;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalInt;
import neckway.drill.Drill;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.neck.BadInput;
import neckway.neck.GuitarString;
import neckway.neck.JoinChoice;
import neckway.neck.Key;
import neckway.neck.Neck;
import neckway.neck.RouteBuilder;
import neckway.neck.Shape;
import neckway.neck.Tuning;
import neckway.words.Wording;

/** Drills to and from JSON, format {@value #FORMAT}. Fields that are not known are passed over. */
public final class DrillFile {
  /** The format's name and version. */
  public static final String FORMAT = "neckway-drill/1";

  private static final int MOST_BEATS_PER_BAR = 16;
  private static final int LONGEST_COUNT_IN = 16;

  private DrillFile() {}

  /**
   * Reads a drill and makes sure that its route can be played.
   *
   * @throws BadInput naming the file, the field and the mend
   */
  public static PlayableDrill read(Path file) {
    return fromJson(JsonFile.read(file), file.toString());
  }

  /**
   * Writes a drill beside its target and moves it into place.
   *
   * @throws BadInput if it cannot be written
   */
  public static void write(Path file, PlayableDrill drill) {
    JsonFile.write(file, toJson(drill));
  }

  /**
   * Reads a drill and makes sure that its route can be played.
   *
   * @param where what a complaint begins with: the file's name
   * @throws BadInput naming the field and the mend
   */
  public static PlayableDrill fromJson(JsonNode json, String where) {
    Fields fields = Fields.of(json, where);
    checkFormat(fields);
    fields
        .text("scale")
        .filter(scale -> !scale.equals("pentatonic"))
        .ifPresent(
            scale -> {
              throw fields.bad("scale", Wording.of("files.drill.scale", scale));
            });
    String key = fields.text("key").orElseThrow(() -> fields.missing("key", "\"A major\""));
    Fields route = fields.object("route");
    List<String> shapes = route.texts("shapes");
    if (!route.has("shapes")) {
      throw route.missing("shapes", "[\"major\", \"dorian\"]");
    }
    Drill drill =
        new Drill(
            fields.text("title").filter(title -> !title.isBlank()),
            fields.has("tuning")
                ? fields.read("tuning", () -> Tuning.of(fields.textOrTexts("tuning")))
                : Tuning.STANDARD,
            fields.whole("frets", Neck.FEWEST_FRETS, Neck.MOST_FRETS).orElse(Neck.USUAL_FRETS),
            fields.read("key", () -> Key.parse(key)),
            route.read("shapes", () -> shapes.stream().map(Shape::parse).toList()),
            route.whole("start", 0, Neck.MOST_FRETS),
            route.objects("up", DrillFile::join),
            route.objects("down", DrillFile::join),
            fields.whole("rounds", 1, RouteBuilder.MOST_ROUNDS).orElse(1),
            pulse(fields.object("pulse")));
    return fields.read("route", drill::playable);
  }

  private static void checkFormat(Fields fields) {
    String format =
        fields.text("format").orElseThrow(() -> fields.missing("format", "\"" + FORMAT + "\""));
    if (!format.equals(FORMAT)) {
      throw fields.bad("format", Wording.of("files.format.drill", format, FORMAT));
    }
  }

  private static JoinChoice join(Fields fields) {
    OptionalInt string = fields.whole("string", 1, GuitarString.MAX_STRINGS);
    OptionalInt finger = fields.whole("finger", 1, 4);
    return new JoinChoice(string.orElseThrow(() -> fields.missing("string", "3")), finger);
  }

  private static Pulse pulse(Fields fields) {
    Pulse usual = Drill.USUAL_PULSE;
    Pulse plain =
        new Pulse(
            fields.number("tempo", Pulse.SLOWEST, Pulse.FASTEST).orElse(usual.tempo()),
            fields.whole("notesPerBeat", 1, Pulse.MOST_NOTES_PER_BEAT).orElse(usual.notesPerBeat()),
            fields.whole("beatsPerBar", 1, MOST_BEATS_PER_BAR).orElse(usual.beatsPerBar()),
            fields.whole("countIn", 0, LONGEST_COUNT_IN).orElse(usual.countIn()));
    Pulse pulse =
        plain.withFeel(
            fields.number("swing", Pulse.STRAIGHT, Pulse.MOST_SWING).orElse(Pulse.STRAIGHT),
            fields.number("offsetBeats", 0, Pulse.LATEST_OFFSET).orElse(0));
    fields.read("swing", pulse::checkedSwing);
    return fields.read("offsetBeats", pulse::checkedOffset);
  }

  /** A drill as JSON, with everything said: title, start, and each join with its finger. */
  public static ObjectNode toJson(PlayableDrill playable) {
    Drill drill = playable.drill();
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    json.put("format", FORMAT);
    json.put("title", drill.title());
    drill.tuning().names().forEach(json.putArray("tuning")::add);
    json.put("frets", drill.frets());
    json.put("key", drill.key().toString());
    json.put("scale", "pentatonic");
    ObjectNode route = json.putObject("route");
    ArrayNode shapes = route.putArray("shapes");
    drill.shapes().forEach(shape -> shapes.add(shape.word()));
    drill.start().ifPresent(start -> route.put("start", start));
    putJoins(route, "up", drill.up());
    putJoins(route, "down", drill.down());
    json.put("rounds", drill.rounds());
    ObjectNode pulse = json.putObject("pulse");
    pulse.put("tempo", drill.pulse().tempo());
    pulse.put("notesPerBeat", drill.pulse().notesPerBeat());
    pulse.put("beatsPerBar", drill.pulse().beatsPerBar());
    pulse.put("countIn", drill.pulse().countIn());
    if (drill.pulse().swing() != Pulse.STRAIGHT) {
      pulse.put("swing", drill.pulse().swing());
    }
    if (drill.pulse().offsetBeats() != 0) {
      pulse.put("offsetBeats", drill.pulse().offsetBeats());
    }
    return json;
  }

  private static void putJoins(ObjectNode route, String name, List<JoinChoice> joins) {
    if (joins.isEmpty()) {
      return;
    }
    ArrayNode list = route.putArray(name);
    for (JoinChoice join : joins) {
      ObjectNode one = list.addObject().put("string", join.string());
      join.finger().ifPresent(finger -> one.put("finger", finger));
    }
  }
}
