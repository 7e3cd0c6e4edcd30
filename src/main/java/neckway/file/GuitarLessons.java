package neckway.file;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import neckway.neck.BadInput;
import neckway.neck.GuitarString;
import neckway.string.GuitarProfile;
import neckway.string.Lesson;
import neckway.string.StringProfile;

/**
 * What live runs teach of a guitar, kept in its profile. A run's lessons wait there as {@code
 * pending} until the next live run begins; so the review of a saved take says what was said live.
 */
public final class GuitarLessons {
  private static final int MOST_NOTES = 1_000_000;

  private GuitarLessons() {}

  /**
   * Takes in what earlier runs taught. The calibration's own value stays beside it as {@code
   * calibrated}.
   *
   * @throws BadInput if the file is no profile, or cannot be written
   */
  public static void takeIn(Path file) {
    JsonNode json = JsonFile.read(file);
    GuitarProfile profile = GuitarFile.fromJson(json, file.toString());
    boolean any = false;
    for (JsonNode node : json.path("strings")) {
      ObjectNode string = (ObjectNode) node;
      GuitarString number = new GuitarString(string.path("string").asInt());
      Optional<Lesson> pending = lesson(string, "pending", number, file);
      if (pending.isPresent()) {
        any = true;
        Lesson all =
            lesson(string, "learnt", number, file).map(pending.get()::and).orElse(pending.get());
        StringProfile calibrated = calibrated(string, profile.of(number), file);
        string.put("calibrated", GuitarFile.digits(Math.exp(calibrated.lnStiffness())));
        string.put("stiffness", GuitarFile.digits(Math.exp(all.with(calibrated))));
        put(string, "learnt", all);
        string.remove("pending");
      }
    }
    if (any) {
      JsonFile.write(file, json);
    }
  }

  /**
   * Keeps a run's lessons for the next one.
   *
   * @throws BadInput if the file is no profile, or cannot be written
   */
  public static void keep(Path file, List<Lesson> lessons) {
    if (lessons.isEmpty()) {
      return;
    }
    JsonNode json = JsonFile.read(file);
    GuitarFile.fromJson(json, file.toString());
    for (JsonNode node : json.path("strings")) {
      ObjectNode string = (ObjectNode) node;
      GuitarString number = new GuitarString(string.path("string").asInt());
      for (Lesson lesson : lessons) {
        if (lesson.string().equals(number)) {
          put(
              string,
              "pending",
              lesson(string, "pending", number, file).map(lesson::and).orElse(lesson));
        }
      }
    }
    JsonFile.write(file, json);
  }

  private static StringProfile calibrated(ObjectNode string, StringProfile now, Path file) {
    OptionalDouble stiffness =
        Fields.of(string, file.toString())
            .number("calibrated", GuitarFile.LEAST_STIFFNESS, GuitarFile.MOST_STIFFNESS);
    return new StringProfile(
        now.string(),
        now.openMidi(),
        now.centsOff(),
        stiffness.isPresent() ? Math.log(stiffness.getAsDouble()) : now.lnStiffness(),
        now.spread(),
        now.plucks());
  }

  private static Optional<Lesson> lesson(
      ObjectNode string, String name, GuitarString number, Path file) {
    if (!string.path(name).isObject()) {
      return Optional.empty();
    }
    Fields fields = Fields.of(string.path(name), file.toString());
    OptionalInt notes = fields.whole("notes", 1, MOST_NOTES);
    OptionalDouble stiffness =
        fields.number("stiffness", GuitarFile.LEAST_STIFFNESS, GuitarFile.MOST_STIFFNESS);
    return notes.isEmpty() || stiffness.isEmpty()
        ? Optional.empty()
        : Optional.of(new Lesson(number, notes.getAsInt(), Math.log(stiffness.getAsDouble())));
  }

  private static void put(ObjectNode string, String name, Lesson lesson) {
    ObjectNode one = string.putObject(name);
    one.put("notes", lesson.notes());
    one.put("stiffness", GuitarFile.digits(Math.exp(lesson.lnStiffness())));
  }
}
