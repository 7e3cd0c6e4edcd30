package neckway.file;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import neckway.drill.PlayableDrill;
import neckway.review.Clock;
import neckway.review.Review;
import neckway.run.Run;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReviewFileTests {
  private static final String DRILL =
      """
      { "format": "neckway-drill/1", "key": "G major",
        "route": { "shapes": ["major", "dorian"], "start": 3,
                   "up": [{"string": 3, "finger": 1}], "down": [{"string": 5, "finger": 4}] } }
      """;

  private final PlayableDrill drill =
      DrillFile.fromJson(
          JsonFile.parse(DRILL.getBytes(StandardCharsets.UTF_8), "the drill"), "the drill");

  private Review silence() {
    Run run =
        new Run(
            drill, Optional.empty(), 44_100, OptionalDouble.of(2), Clock.MEASURED, verdict -> {});
    run.feed(new float[44_100], 0, 44_100);
    return run.finish();
  }

  private static List<String> names(JsonNode node) {
    List<String> names = new ArrayList<>();
    node.fieldNames().forEachRemaining(names::add);
    return names;
  }

  @Test
  void aSilentTakeHasEveryFieldOfTheFormat() {
    ObjectNode json = ReviewFile.toJson(silence(), "take.wav", drill);
    assertThat(names(json))
        .containsSubsequence(
            "format", "take", "drill", "grid", "notes", "steps", "shifts", "summary");
    assertThat(json.get("format").asText()).isEqualTo("neckway-review/1");
    assertThat(names(json.get("take")))
        .containsExactly("file", "seconds", "sampleRate", "peakDbfs", "noiseDbfs", "tuningCents");
    assertThat(json.get("take").get("seconds").asDouble()).isEqualTo(1);
    assertThat(json.get("take").get("tuningCents").isNull()).isTrue();
    assertThat(names(json.get("grid"))).contains("source", "tempo", "firstBeat");
    assertThat(json.get("grid").get("source").asText()).isEqualTo("given");
    assertThat(json.get("notes")).isEmpty();
    assertThat(json.get("steps")).hasSize(25);
    assertThat(names(json.get("steps").get(0)))
        .containsExactly("step", "string", "fret", "midi", "due", "verdict");
    assertThat(json.get("steps").get(8).toString())
        .isEqualTo(
            "{\"step\":8,\"string\":3,\"fret\":7,\"midi\":62,\"due\":5.000000,"
                + "\"verdict\":\"unplayed\"}");
    assertThat(json.get("shifts")).hasSize(2);
    assertThat(names(json.get("shifts").get(0)))
        .containsExactly(
            "round", "direction", "planned", "verdict", "string", "p", "lateMs", "decided");
    assertThat(json.get("shifts").get(0).get("planned").toString())
        .isEqualTo("{\"string\":3,\"finger\":1}");
    assertThat(names(json.get("summary")))
        .containsExactly(
            "notes",
            "right",
            "wrong",
            "extra",
            "repeat",
            "skipped",
            "offMsMedian",
            "offMsSpread",
            "swing",
            "shiftsMade",
            "shiftsPlanned",
            "words");
    assertThat(json.get("summary").get("words").get(0).asText()).contains("no notes");
  }

  @Test
  void theDrillInsideCanBeReadAgain() {
    ObjectNode json = ReviewFile.toJson(silence(), "take.wav", drill);
    PlayableDrill again = DrillFile.fromJson(json.get("drill"), "the review");
    assertThat(again.route()).isEqualTo(drill.route());
  }

  @Test
  void whatIsWrittenIsWhatIsRead(@TempDir Path folder) {
    Path file = folder.resolve("review.json");
    Review review = silence();
    ReviewFile.write(file, review, "take.wav", drill);
    assertThat(JsonFile.text(JsonFile.read(file)))
        .isEqualToNormalizingNewlines(
            JsonFile.text(
                JsonFile.parse(
                    JsonFile.text(ReviewFile.toJson(review, "take.wav", drill))
                        .getBytes(StandardCharsets.UTF_8),
                    "the review")));
  }
}
