package neckway.file;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import java.util.OptionalDouble;
import neckway.practice.Exercise;
import neckway.practice.Progress;
import neckway.practice.Reach;

/** What is open as JSON, format {@value #FORMAT}. */
public final class ReachFile {
  /** The format's name and version. */
  public static final String FORMAT = "neckway-reach/1";

  private static final double HUNDREDTHS = 100;

  private ReachFile() {}

  /** What is open of a key as JSON. */
  public static ObjectNode toJson(Reach reach) {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    json.put("format", FORMAT);
    json.put("key", reach.key().toString());
    json.put("day", reach.today().toString());
    json.put("target", reach.target());
    ArrayNode joins = json.putArray("joins");
    for (Progress progress : reach.joins()) {
      if (progress.exercise() instanceof Exercise.OfJoin join) {
        ObjectNode one = joins.addObject();
        one.put("lower", join.lower().word());
        one.put("upper", join.upper().word());
        one.put("direction", join.direction().name().toLowerCase(Locale.ROOT));
        one.put("string", join.string());
        one.put("finger", join.finger());
        put(one, progress);
        put(one, "lateMsMedian", progress.lateMsMedian());
        one.put("state", progress.state().word());
      }
    }
    ArrayNode shapes = json.putArray("shapes");
    for (Progress progress : reach.shapes()) {
      if (progress.exercise() instanceof Exercise.OfShape shape) {
        ObjectNode one = shapes.addObject();
        one.put("name", shape.shape().word());
        put(one, progress);
        one.put("state", progress.state().word());
      }
    }
    return json;
  }

  private static void put(ObjectNode json, Progress progress) {
    json.put("rounds", progress.rounds());
    json.put("cleanRounds", progress.cleanRounds());
    put(json, "bestCleanTempo", progress.bestCleanTempo());
    progress
        .lastDay()
        .ifPresentOrElse(day -> json.put("lastDay", day.toString()), () -> json.putNull("lastDay"));
  }

  private static void put(ObjectNode json, String name, OptionalDouble value) {
    if (value.isPresent()) {
      json.put(name, Math.rint(value.getAsDouble() * HUNDREDTHS) / HUNDREDTHS);
    } else {
      json.putNull(name);
    }
  }
}
