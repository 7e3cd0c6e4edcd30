package neckway.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Stream;
import neckway.file.JsonFile;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The takes in {@code test-audio/}: the commands on its page make them again to the last byte, and
 * a review of each says what its truth says.
 */
@Tag("slow")
class TestAudioTests {
  private static final Path AUDIO = Path.of("test-audio");
  private static final String COMMAND = "java -jar target/neckway.jar perform ";

  /** Truth and hearing of a landing differ by no more than two onsets may, milliseconds. */
  private static final double LATE_TOLERANCE_MS = 20;

  @TempDir private Path folder;

  /** The commands on the page, as arguments. */
  static Stream<List<String>> commands() throws IOException {
    return Files.readAllLines(AUDIO.resolve("README.md")).stream()
        .filter(line -> line.startsWith(COMMAND))
        .map(
            line ->
                Arrays.asList(line.substring(COMMAND.length() - "perform ".length()).split(" ")));
  }

  static Stream<String> takes() throws IOException {
    return commands().filter(c -> !c.contains("--calibration")).map(TestAudioTests::take);
  }

  private static String take(List<String> command) {
    String out = Path.of(after(command, "--out")).getFileName().toString();
    return out.substring(0, out.length() - ".wav".length());
  }

  private static String after(List<String> command, String option) {
    return command.get(command.indexOf(option) + 1);
  }

  @ParameterizedTest
  @MethodSource("commands")
  void theCommandMakesTheSameBytes(List<String> command) throws IOException {
    String take = take(command);
    List<String> here = new ArrayList<>(command);
    for (String option : List.of("--out", "--truth")) {
      int at = here.indexOf(option) + 1;
      here.set(at, folder.resolve(Path.of(here.get(at)).getFileName()).toString());
    }
    assertThat(run(here)).contains(" notes in ");
    for (String file : List.of(take + ".wav", take + ".truth.json")) {
      assertThat(folder.resolve(file)).hasSameBinaryContentAs(AUDIO.resolve(file));
    }
  }

  @ParameterizedTest
  @MethodSource("takes")
  void theReviewSaysWhatTheTruthSays(String take) {
    JsonNode truth = JsonFile.read(AUDIO.resolve(take + ".truth.json"));
    String firstBeat = truth.get("grid").get("firstBeat").asText();
    JsonNode review = review(take, "--first-beat", firstBeat);
    assertThat(slips(review)).isEqualTo(slips(truth));
    assertThat(missed(review)).isEqualTo(missed(truth));
    for (int i = 0; i < truth.get("shifts").size(); i++) {
      JsonNode played = truth.get("shifts").get(i).get("lateMs");
      JsonNode heard = review.get("shifts").get(i).get("lateMs");
      assertThat(heard.isNumber()).isEqualTo(played.isNumber());
      assertThat(heard.asDouble()).isCloseTo(played.asDouble(), within(LATE_TOLERANCE_MS));
    }
  }

  @ParameterizedTest
  @MethodSource("takes")
  void withoutTheFirstBeatTheSlipsAreTheSame(String take) {
    JsonNode truth = JsonFile.read(AUDIO.resolve(take + ".truth.json"));
    assertThat(slips(review(take))).isEqualTo(slips(truth));
  }

  @Test
  void everyTakeIsOnThePageAndSmall() throws IOException {
    List<String> named = commands().map(TestAudioTests::take).sorted().toList();
    try (Stream<Path> files = Files.list(AUDIO)) {
      List<Path> there = files.filter(file -> file.toString().endsWith(".wav")).sorted().toList();
      assertThat(there.stream().map(file -> file.getFileName().toString()))
          .containsExactlyElementsOf(named.stream().map(take -> take + ".wav").toList());
      for (Path file : there) {
        assertThat(Files.size(file)).isLessThan(2_000_000);
      }
    }
  }

  @Test
  void theCalibratedGuitarTellsOnWhichStringTheHandMoved() {
    Path guitar = folder.resolve("guitar.json");
    run(
        List.of(
            "calibrate", AUDIO.resolve("calibration.wav").toString(), "--out", guitar.toString()));
    JsonNode review = review("moved-shift", "--guitar", guitar.toString());
    JsonNode truth = JsonFile.read(AUDIO.resolve("moved-shift.truth.json"));
    for (int i = 0; i < 2; i++) {
      JsonNode said = review.get("shifts").get(i);
      JsonNode played = truth.get("shifts").get(i);
      assertThat(said.get("verdict")).isEqualTo(played.get("verdict"));
      assertThat(said.get("string")).isEqualTo(played.get("string"));
      assertThat(said.get("p").asDouble()).isBetween(0.9, 1.0);
    }
    for (int i = 0; i < truth.get("notes").size(); i++) {
      JsonNode played = truth.get("notes").get(i).get("places").get(0);
      for (JsonNode place : review.get("notes").get(i).get("places")) {
        if (place.get("string").equals(played.get("string"))) {
          assertThat(place.get("p").asDouble()).isGreaterThan(0.9);
        }
      }
    }
  }

  /** "wrong 5", "skipped 11" and so on, each step once. */
  private static TreeSet<String> slips(JsonNode review) {
    TreeSet<String> slips = new TreeSet<>();
    for (JsonNode note : review.get("notes")) {
      String verdict = note.get("verdict").asText();
      if (!verdict.equals("right")) {
        Optional<String> time =
            verdict.equals("extra")
                ? Optional.of("midi " + note.get("midi") + " in slot " + note.get("slot"))
                : Optional.empty();
        slips.add(verdict + " " + time.orElse(note.get("step").asText()));
      }
    }
    for (JsonNode step : review.get("steps")) {
      String verdict = step.get("verdict").asText();
      if (!verdict.equals("played")) {
        slips.add(verdict + " " + step.get("step"));
      }
    }
    return slips;
  }

  private static List<Boolean> missed(JsonNode review) {
    List<Boolean> missed = new ArrayList<>();
    review.get("shifts").forEach(s -> missed.add(s.get("verdict").asText().equals("missed")));
    return missed;
  }

  private static JsonNode review(String take, String... more) {
    List<String> command =
        new ArrayList<>(
            List.of(
                "review",
                AUDIO.resolve(take + ".wav").toString(),
                "--drill",
                AUDIO.resolve(take + ".drill.json").toString(),
                "--json",
                "-"));
    command.addAll(List.of(more));
    return JsonFile.parse(run(command).getBytes(StandardCharsets.UTF_8), take);
  }

  private static String run(List<String> command) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int status =
        Main.run(new PrintWriter(out), new PrintWriter(err), command.toArray(String[]::new));
    assertThat(status).as(err.toString()).isZero();
    return out.toString();
  }
}
