package neckway.log;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import neckway.drill.Drill;
import neckway.drill.PlayableDrill;
import neckway.neck.JoinChoice;
import neckway.neck.Shape;
import neckway.review.Review;
import neckway.review.ReviewedRound;
import neckway.review.Summary;

/**
 * A run in a line: what a list and a table say of it.
 *
 * @param key as players say it; empty for a run without a review
 * @param shapes their words with commas between
 * @param up strings of the joins going up, with commas between
 * @param down strings of the joins coming down
 * @param tempo at which it was played, beats a minute
 * @param notesPerBeat of the drill
 * @param rounds of the drill
 * @param cleanRounds of them
 * @param summary its counts, and the player's own swing where it was told; earlier versions kept
 *     none
 */
public record RunSummary(
    String key,
    String shapes,
    String up,
    String down,
    double tempo,
    int notesPerBeat,
    int rounds,
    int cleanRounds,
    Summary summary) {
  private static final Summary NOTHING =
      new Summary(
          0, 0, 0, 0, 0, 0, OptionalDouble.empty(), OptionalDouble.empty(), 0, 0, List.of());

  /** Of a run without a review. */
  static final RunSummary NONE = new RunSummary("", "", "", "", 0, 0, 0, 0, NOTHING);

  static RunSummary of(PlayableDrill drill, Review review) {
    Drill asked = drill.drill();
    return new RunSummary(
        drill.key().toString(),
        drill.shapes().stream().map(Shape::word).collect(Collectors.joining(",")),
        strings(asked.up()),
        strings(asked.down()),
        review.grid().tempo(),
        drill.pulse().notesPerBeat(),
        drill.rounds(),
        (int) ReviewedRound.of(drill, review).stream().filter(ReviewedRound::clean).count(),
        review.summary());
  }

  private static String strings(List<JoinChoice> joins) {
    return joins.stream()
        .map(join -> Integer.toString(join.string()))
        .collect(Collectors.joining(","));
  }

  /** As it is stored; its key comes first. */
  String text() {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    json.put("key", key);
    json.put("shapes", shapes);
    json.put("up", up);
    json.put("down", down);
    json.put("tempo", tempo);
    json.put("notesPerBeat", notesPerBeat);
    json.put("rounds", rounds);
    json.put("cleanRounds", cleanRounds);
    json.put("notes", summary.notes());
    json.put("right", summary.right());
    json.put("wrong", summary.wrong());
    json.put("extra", summary.extra());
    json.put("repeat", summary.repeat());
    json.put("skipped", summary.skipped());
    summary.offMsMedian().ifPresent(ms -> json.put("offMsMedian", ms));
    summary.offMsSpread().ifPresent(ms -> json.put("offMsSpread", ms));
    json.put("shiftsMade", summary.shiftsMade());
    json.put("shiftsPlanned", summary.shiftsPlanned());
    summary.swing().ifPresent(share -> json.put("swing", share));
    return RunLine.text(json);
  }

  static RunSummary read(String text) {
    JsonNode json = RunLine.parse(text, "");
    return new RunSummary(
        json.path("key").asText(),
        json.path("shapes").asText(),
        json.path("up").asText(),
        json.path("down").asText(),
        json.path("tempo").asDouble(),
        json.path("notesPerBeat").asInt(),
        json.path("rounds").asInt(),
        json.path("cleanRounds").asInt(),
        new Summary(
            json.path("notes").asInt(),
            json.path("right").asInt(),
            json.path("wrong").asInt(),
            json.path("extra").asInt(),
            json.path("repeat").asInt(),
            json.path("skipped").asInt(),
            optional(json.path("offMsMedian")),
            optional(json.path("offMsSpread")),
            json.path("shiftsMade").asInt(),
            json.path("shiftsPlanned").asInt(),
            optional(json.path("swing")),
            List.of()));
  }

  private static OptionalDouble optional(JsonNode value) {
    return value.isNumber() ? OptionalDouble.of(value.asDouble()) : OptionalDouble.empty();
  }
}
