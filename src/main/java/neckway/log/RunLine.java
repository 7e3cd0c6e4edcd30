package neckway.log;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Optional;
import neckway.neck.BadInput;
import neckway.words.Wording;

/**
 * A run as a line of JSON. Numbers keep the digits that they are written with, so that what is
 * exported, imported and exported again is the same to the byte.
 */
final class RunLine {
  private static final ObjectMapper EXACT =
      JsonMapper.builder()
          .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .nodeFactory(JsonNodeFactory.withExactBigDecimals(true))
          .build();

  private RunLine() {}

  /** A JSON text, its numbers as they are written. */
  static JsonNode parse(String text, String where) {
    try {
      JsonNode node = EXACT.readTree(text);
      if (node == null || node.isMissingNode()) {
        throw new BadInput(Wording.of("machine.log.line.empty", where));
      }
      return node;
    } catch (JsonProcessingException e) {
      throw new BadInput(Wording.of("machine.log.line.noJson", where), e);
    }
  }

  /** A JSON text without a line break. */
  static String text(JsonNode node) {
    try {
      return EXACT.writeValueAsString(node);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  /** A run as its line has it. */
  static KeptRun read(JsonNode line, String where) {
    if (!(line instanceof ObjectNode object)) {
      throw new BadInput(Wording.of("machine.log.line.noObject", where));
    }
    String id = object.path("id").asText("").strip();
    if (id.isEmpty() || id.length() > 200 || id.chars().anyMatch(Character::isISOControl)) {
      throw new BadInput(Wording.of("machine.log.line.id", where));
    }
    JsonNode when = object.path("when");
    if (!when.isTextual()) {
      throw new BadInput(Wording.of("machine.log.line.when", where));
    }
    ObjectNode about = object.deepCopy();
    JsonNode review = about.remove("review");
    if (review != null && !review.isNull() && !review.isObject()) {
      throw new BadInput(Wording.of("machine.log.line.review", where));
    }
    return new KeptRun(
        id,
        time(when.textValue(), where + ": when"),
        about,
        review instanceof ObjectNode r ? Optional.of(r) : Optional.empty());
  }

  /** A run's line. */
  static String of(KeptRun run) {
    ObjectNode line = run.about().deepCopy();
    line.set(
        "review", run.review().map(r -> (JsonNode) r).orElse(JsonNodeFactory.instance.nullNode()));
    return text(line);
  }

  /**
   * A time as ISO 8601 writes it; without an offset it is of here.
   *
   * @param name what a complaint begins with
   */
  static OffsetDateTime time(String text, String name) {
    try {
      return OffsetDateTime.parse(text);
    } catch (DateTimeException noOffset) {
      try {
        return LocalDateTime.parse(text).atZone(ZoneId.systemDefault()).toOffsetDateTime();
      } catch (DateTimeException e) {
        throw new BadInput(Wording.of("machine.log.line.time", name, text), e);
      }
    }
  }

  /** A time as it is written in a line. */
  static String text(OffsetDateTime when) {
    return DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(when);
  }
}
