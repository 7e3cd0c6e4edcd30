package neckway.folder;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.OptionalInt;
import neckway.drill.PlayableDrill;
import neckway.review.Review;
import neckway.review.Summary;
import neckway.review.words.Words;
import neckway.words.Wording;

/**
 * What the table says of one recording.
 *
 * @param cells by column, in their order; a column that is not known of it is null
 * @param attempts how many tries the recording holds; empty where it was not read
 * @param digest of all that the review follows from; empty where there is none
 */
record TakeRow(ObjectNode cells, OptionalInt attempts, String digest) {
  static final List<String> COLUMNS =
      List.of(
          "file",
          "name",
          "status",
          "drill",
          "notes",
          "right",
          "wrong",
          "extra",
          "repeat",
          "skipped",
          "shiftsMade",
          "shiftsPlanned",
          "offMsMedian",
          "offMsSpread",
          "firstAdvice");

  private static final String READ = "ok";
  private static final String ATTEMPTS = "attempts";
  private static final String DIGEST = "digest";

  static TakeRow of(
      TakeJob job, PlayableDrill drill, boolean guessed, Review review, String digest) {
    ObjectNode cells = begun(job, READ);
    String title = drill.spokenTitle();
    cells.put("drill", guessed ? Wording.of("machine.takes.guess", title) : title);
    Summary summary = review.summary();
    cells.put("notes", summary.notes());
    cells.put("right", summary.right());
    cells.put("wrong", summary.wrong());
    cells.put("extra", summary.extra());
    cells.put("repeat", summary.repeat());
    cells.put("skipped", summary.skipped());
    cells.put("shiftsMade", summary.shiftsMade());
    cells.put("shiftsPlanned", summary.shiftsPlanned());
    summary.offMsMedian().ifPresent(ms -> cells.put("offMsMedian", tenth(ms)));
    summary.offMsSpread().ifPresent(ms -> cells.put("offMsSpread", tenth(ms)));
    Words.advice(review).ifPresent(words -> cells.put("firstAdvice", words));
    return new TakeRow(whole(cells), OptionalInt.of(review.attempts()), digest);
  }

  /** One that could not be read, or not yet. */
  static TakeRow not(TakeJob job, String why) {
    return new TakeRow(whole(begun(job, why)), OptionalInt.empty(), "");
  }

  private static ObjectNode begun(TakeJob job, String status) {
    ObjectNode cells = JsonNodeFactory.instance.objectNode();
    cells.put("file", job.file().getFileName().toString());
    cells.put("name", job.name());
    cells.put("status", status);
    return cells;
  }

  private static ObjectNode whole(ObjectNode cells) {
    ObjectNode whole = JsonNodeFactory.instance.objectNode();
    COLUMNS.forEach(
        column -> whole.set(column, cells.has(column) ? cells.get(column) : whole.nullNode()));
    return whole;
  }

  private static double tenth(double ms) {
    return Math.round(10 * ms) / 10.0;
  }

  boolean isRead() {
    return cells.path("status").asText().equals(READ);
  }

  ObjectNode toJson() {
    ObjectNode json = cells.deepCopy();
    attempts.ifPresentOrElse(count -> json.put(ATTEMPTS, count), () -> json.putNull(ATTEMPTS));
    json.put(DIGEST, digest);
    return json;
  }

  /** A row of an earlier table. */
  static TakeRow fromJson(JsonNode json) {
    ObjectNode cells = JsonNodeFactory.instance.objectNode();
    COLUMNS.forEach(column -> cells.set(column, json.path(column)));
    JsonNode tries = json.path(ATTEMPTS);
    OptionalInt attempts = tries.isInt() ? OptionalInt.of(tries.asInt()) : OptionalInt.empty();
    return new TakeRow(cells, attempts, json.path(DIGEST).asText());
  }
}
