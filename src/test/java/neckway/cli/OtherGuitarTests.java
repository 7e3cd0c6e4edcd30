package neckway.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import neckway.file.JsonFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A profile that is another guitar's, from its calibration to what is said of a take. */
final class OtherGuitarTests {
  private static final String SHIFT_MOVED =
      "[{\"kind\": \"shift\", \"round\": 0, \"direction\": \"up\", \"string\": 4}]";

  @TempDir private Path folder;

  private void run(String... words) {
    StringWriter err = new StringWriter();
    int status = Main.run(new PrintWriter(new StringWriter()), new PrintWriter(err), words);
    assertThat(status).as(err.toString()).isZero();
  }

  private String path(String name) {
    return folder.resolve(name).toString();
  }

  private String profile(String model) {
    String take = path(model + ".wav");
    run(
        "perform",
        "--calibration",
        "--condition",
        "plain",
        "--model",
        model,
        "--guitar-seed",
        "7",
        "--tail",
        "1",
        "--out",
        take);
    run("calibrate", take, "--out", path(model + ".json"));
    return path(model + ".json");
  }

  private JsonNode review(String guitar) throws Exception {
    Files.writeString(folder.resolve("moved.json"), SHIFT_MOVED);
    List<String> drill = List.of("--key", "A minor", "--shapes", "minor,major", "--up", "3");
    List<String> perform =
        new ArrayList<>(
            List.of(
                "perform",
                "--condition",
                "plain",
                "--model",
                "electric",
                "--guitar-seed",
                "7",
                "--seed",
                "11",
                "--mistakes",
                path("moved.json"),
                "--out",
                path("take.wav")));
    perform.addAll(drill);
    run(perform.toArray(String[]::new));
    List<String> review =
        new ArrayList<>(
            List.of("review", path("take.wav"), "--guitar", guitar, "--json", path("r.json")));
    review.addAll(drill);
    run(review.toArray(String[]::new));
    return JsonFile.read(folder.resolve("r.json"));
  }

  @Test
  void profileOfAnotherGuitarTellsNoStrings() throws Exception {
    for (String other : List.of("acoustic", "nylon", "humbucker")) {
      JsonNode review = review(profile(other));
      assertThat(review.at("/summary/words").toString())
          .as(other)
          .contains("The notes do not sound like the guitar of this profile")
          .doesNotContain("where you planned");
      assertThat(review.at("/shifts").findValuesAsText("verdict"))
          .as(other)
          .containsExactly("unheard", "unheard");
    }
  }

  @Test
  void itsOwnProfileTellsThem() throws Exception {
    JsonNode review = review(profile("electric"));
    assertThat(review.at("/shifts/0/verdict").textValue()).isEqualTo("moved");
    assertThat(review.at("/summary/words").toString())
        .doesNotContain("guitar of this profile")
        .contains("on the fourth string, not on the third string as planned");
  }
}
