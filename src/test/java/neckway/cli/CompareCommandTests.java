package neckway.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import neckway.file.JsonFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Takes whose slips are known: their mistakes lie beside them. */
final class CompareCommandTests {
  @TempDir private Path folder;
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(String... words) {
    out.getBuffer().setLength(0);
    err.getBuffer().setLength(0);
    return Main.run(new PrintWriter(out), new PrintWriter(err), words);
  }

  private String review(String take) {
    String json = folder.resolve(take + ".json").toString();
    String sound = "test-audio/" + take;
    assertThat(run("review", sound + ".wav", "--drill", sound + ".drill.json", "--json", json))
        .isZero();
    return json;
  }

  @Test
  void slipsStandSideBySide() {
    String one = review("three-slips");
    String drill = "test-audio/three-slips.drill.json";
    String take = folder.resolve("friday.wav").toString();
    String other = folder.resolve("friday.json").toString();
    assertThat(run("perform", "--drill", drill, "--seed", "7", "--out", take)).isZero();
    assertThat(run("review", take, "--drill", drill, "--json", other)).isZero();
    assertThat(run("compare", one, other)).as(err.toString()).isZero();
    assertThat(out.toString())
        .contains("three-slips", "friday", "23 of 25", "25 of 25", "left out");
    assertThat(out.toString().lines()).allMatch(line -> line.length() <= 80);
    String json = folder.resolve("compared.json").toString();
    assertThat(run("compare", one, other, "--json", json)).isZero();
    JsonNode compared = JsonFile.read(Path.of(json));
    assertThat(compared.path("format").asText()).isEqualTo("neckway-compare/1");
    JsonNode review = JsonFile.read(Path.of(one)).path("summary");
    assertThat(compared.path("takes").path(0).path("right")).isEqualTo(review.path("right"));
    assertThat(compared.path("steps")).isNotEmpty();
    for (JsonNode step : compared.path("steps")) {
      assertThat(step.path("verdicts").toString()).doesNotMatch("\\[\"played\",\"played\"]");
    }
    assertThat(compared.path("shifts")).hasSize(2);
  }

  @Test
  void otherDrillsAndTooFewAreToldInOneLine() {
    String one = review("three-slips");
    String other = review("clean-run");
    assertThat(run("compare", one, other)).isEqualTo(2);
    assertThat(err.toString().strip()).contains("is of another drill").doesNotContain("\n");
    assertThat(run("compare", one)).isEqualTo(2);
    assertThat(err.toString()).contains("one review: name two to twenty");
  }
}
