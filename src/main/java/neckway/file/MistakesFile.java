package neckway.file;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import neckway.neck.BadInput;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.Route;
import neckway.neck.Shape;
import neckway.player.plan.Mistake;
import neckway.words.Wording;

/** Lists of mistakes that the virtual player is to make, from JSON. */
public final class MistakesFile {
  private static final double LONGEST_LATE_MS = 60_000;
  private static final int HIGHEST_MIDI = 108;

  private MistakesFile() {}

  /**
   * Reads a list.
   *
   * @param route the steps and shifts that the mistakes are about
   * @throws BadInput naming the file, the entry, the field and the mend
   */
  public static List<Mistake> read(Path file, Route route) {
    return fromJson(JsonFile.read(file), file.toString(), route);
  }

  /**
   * Reads a list.
   *
   * @param where what a complaint begins with: the file's name
   * @param route the steps and shifts that the mistakes are about
   * @throws BadInput naming the entry, the field and the mend
   */
  public static List<Mistake> fromJson(JsonNode json, String where, Route route) {
    if (!json.isArray()) {
      throw new BadInput(Wording.of("files.mistakes.noList", where));
    }
    List<Mistake> mistakes = new ArrayList<>();
    for (JsonNode entry : json) {
      String at = Wording.of("files.mistakes.entry", where, mistakes.size() + 1);
      mistakes.add(entry(Fields.of(entry, at), entry, route));
    }
    return mistakes;
  }

  private static Mistake entry(Fields fields, JsonNode entry, Route route) {
    String kind = fields.text("kind").orElseThrow(() -> fields.missing("kind", "\"skip\""));
    return switch (kind) {
      case "wrong" -> slip(fields, Mistake.Kind.WRONG, route);
      case "skip" -> slip(fields, Mistake.Kind.SKIP, route);
      case "repeat" -> slip(fields, Mistake.Kind.REPEAT, route);
      case "extra" -> slip(fields, Mistake.Kind.EXTRA, route);
      case "late" ->
          new Mistake.Late(
              step(fields, route),
              fields
                  .number("ms", -LONGEST_LATE_MS, LONGEST_LATE_MS)
                  .orElseThrow(() -> fields.missing("ms", "120")));
      case "shift" -> shift(fields, entry, route);
      default -> throw fields.bad("kind", Wording.of("files.mistakes.kind", kind));
    };
  }

  private static int step(Fields fields, Route route) {
    return fields
        .whole("step", 0, route.steps().size() - 1)
        .orElseThrow(() -> fields.missing("step", "7"));
  }

  private static Mistake slip(Fields fields, Mistake.Kind kind, Route route) {
    int step = step(fields, route);
    OptionalInt midi = fields.whole("midi", 0, HIGHEST_MIDI);
    if (kind == Mistake.Kind.WRONG
        && midi.isPresent()
        && midi.getAsInt() == route.steps().get(step).midi()) {
      throw fields.bad("midi", Wording.of("files.mistakes.rightNote", midi.getAsInt()));
    }
    return new Mistake.Slip(kind, step, midi);
  }

  private static Mistake shift(Fields fields, JsonNode entry, Route route) {
    int round = fields.whole("round", 0, route.rounds() - 1).orElse(0);
    String word = fields.text("direction").orElseThrow(() -> fields.missing("direction", "\"up\""));
    Direction direction =
        switch (word) {
          case "up" -> Direction.UP;
          case "down" -> Direction.DOWN;
          default -> throw fields.bad("direction", Wording.of("files.mistakes.direction", word));
        };
    if (!entry.has("string")) {
      throw fields.missing("string", Wording.of("files.mistakes.string"));
    }
    OptionalInt string = fields.whole("string", 1, strings(route));
    int pairs = route.shapes().size() - 1;
    if (pairs == 0) {
      throw fields.bad("kind", Wording.of("files.mistakes.oneShape"));
    }
    return new Mistake.ShiftElsewhere(
        round,
        direction,
        pair(fields, route),
        string.isPresent() ? Optional.of(new GuitarString(string.getAsInt())) : Optional.empty());
  }

  private static OptionalInt pair(Fields fields, Route route) {
    int most = Math.min(Shape.values().length, route.shapes().size()) - 2;
    return fields.whole("pair", 0, most);
  }

  private static int strings(Route route) {
    return route.steps().stream().mapToInt(s -> s.place().string().number()).max().orElse(1);
  }
}
