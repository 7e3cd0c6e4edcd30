package neckway.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import neckway.file.JsonFile;
import neckway.file.sound.WavWriter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Takes rendered by the virtual player, reviewed as a person would. */
class ReviewCommandTests {
  private static final String[] DRILL = {
    "--key", "G major", "--shapes", "major,dorian", "--start", "3", "--up", "3", "--down", "5"
  };

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();
  @TempDir private Path folder;

  private int run(String command, String... args) {
    List<String> all = new ArrayList<>(List.of(command));
    all.addAll(List.of(DRILL));
    all.addAll(List.of(args));
    out.getBuffer().setLength(0);
    return Main.run(new PrintWriter(out), new PrintWriter(err), all.toArray(String[]::new));
  }

  private String take(String mistakes) throws IOException {
    Path file = folder.resolve("mistakes.json");
    Files.writeString(file, mistakes);
    String take = folder.resolve("take.wav").toString();
    String truth = folder.resolve("truth.json").toString();
    assertThat(
            run(
                "perform",
                "--mistakes",
                file.toString(),
                "--seed",
                "7",
                "--out",
                take,
                "--truth",
                truth))
        .as(err.toString())
        .isZero();
    return take;
  }

  private double firstBeat() {
    return JsonFile.read(folder.resolve("truth.json")).get("grid").get("firstBeat").asDouble();
  }

  @Test
  void slipsAreSaidInWordsOnThePageAndInTheFile() throws IOException {
    String take =
        take(
            """
            [ {"kind": "wrong", "step": 4, "midi": 53}, {"kind": "repeat", "step": 10},
              {"kind": "skip", "step": 17} ]
            """);
    Path json = folder.resolve("review.json");
    String beat = Double.toString(firstBeat());
    assertThat(run("review", take, "--first-beat", beat, "--json", json.toString()))
        .as(err.toString())
        .isZero();
    assertThat(out.toString())
        .contains("One note wrong: fret 2 on the fourth string, going up, sounded like fret 3.")
        .contains("First: hold fret 5 on the fourth string with the fourth finger, and set the")
        .contains("2x")
        .contains("(4)")
        .contains("8\"");
    assertThat(out.toString().lines()).allMatch(line -> line.length() <= 80);
    JsonNode review = JsonFile.read(json);
    assertThat(review.get("take").get("file").asText()).isEqualTo("take.wav");
    assertThat(review.get("grid").get("source").asText()).isEqualTo("given");
    assertThat(review.get("steps").get(4).get("verdict").asText()).isEqualTo("wrong");
    assertThat(review.get("steps").get(17).get("verdict").asText()).isEqualTo("skipped");
    assertThat(review.get("summary").get("repeat").asInt()).isEqualTo(1);
    assertThat(review.get("summary").get("right").asInt()).isEqualTo(23);
    assertThat(err.toString()).isEmpty();
  }

  @Test
  void thePageHasTheHighestStringOnTopAsTabDoes() throws IOException {
    assertThat(run("review", take("[]"))).isZero();
    List<String> names =
        out.toString()
            .lines()
            .filter(line -> line.contains("|"))
            .map(line -> line.substring(0, line.indexOf('|')).strip())
            .limit(6)
            .toList();
    assertThat(names).containsExactly("E", "B", "G", "D", "A", "E");
    String lowest = out.toString().lines().filter(line -> line.contains("|")).toList().get(5);
    assertThat(lowest).contains("3---5");
  }

  @Test
  void aLandingMostOfASlotLateIsLateOnThePageNotEarly() throws IOException {
    String take = take("[{\"kind\": \"late\", \"step\": 8, \"ms\": 240}]");
    assertThat(run("review", take, "--first-beat", Double.toString(firstBeat()))).isZero();
    String off =
        out.toString().lines().filter(line -> line.strip().startsWith("ms")).toList().get(1);
    assertThat(off.strip().split("\\s+")[1]).matches("\\+2\\d\\d");
  }

  @Test
  void aHesitationAndALateStartAreSaid() throws IOException {
    String take = take("[{\"kind\": \"late\", \"step\": 4, \"ms\": 1500}]");
    double beatBefore = firstBeat() - 0.75;
    assertThat(run("review", take, "--first-beat", Double.toString(beatBefore))).isZero();
    assertThat(out.toString())
        .contains("You came in a beat late.")
        .containsPattern(
            "You hesitated before fret 2 on the fourth string, going up, for 1\\.[456]\\s+seconds\\.");
    assertThat(run("review", take("[]"), "--first-beat", Double.toString(firstBeat()))).isZero();
    assertThat(out.toString()).doesNotContain("You came in").doesNotContain("hesitated");
  }

  @Test
  void aMissedShiftIsSaid() throws IOException {
    String take =
        take("[{\"kind\": \"shift\", \"round\": 0, \"direction\": \"up\", \"string\": null}]");
    assertThat(run("review", take)).isZero();
    assertThat(out.toString()).contains("The hand stayed in the major shape");
  }

  @Test
  void jsonOnStandardOutputIsAllThatIsThere() throws IOException {
    String take = take("[]");
    assertThat(run("review", take, "--json", "-")).isZero();
    JsonNode review =
        JsonFile.parse(out.toString().getBytes(StandardCharsets.UTF_8), "standard output");
    assertThat(review.get("format").asText()).isEqualTo("neckway-review/1");
    double gap = 0.375;
    double off =
        Math.IEEEremainder(review.get("grid").get("firstBeat").asDouble() - firstBeat(), gap);
    assertThat(Math.abs(off)).isLessThan(0.02);
  }

  @Test
  void aSilentTakeIsReviewedAndTheWordsSaySo() {
    Path take = folder.resolve("silence.wav");
    try (WavWriter writer = new WavWriter(take, 44_100, WavWriter.Coding.PCM_16)) {
      writer.write(new float[44_100], 0, 44_100);
      writer.finish();
    }
    assertThat(run("review", take.toString())).isZero();
    assertThat(out.toString()).startsWith("I heard no notes in this take.");
  }

  @Test
  void aMissingTakeIsOneLineAndLeavesAnOlderReviewAlone() throws IOException {
    Path json = folder.resolve("review.json");
    String older = "{\"format\": \"neckway-review/1\"}";
    Files.writeString(json, older);
    assertThat(run("review", folder.resolve("none.wav").toString(), "--json", json.toString()))
        .isEqualTo(2);
    assertThat(err.toString().lines()).hasSize(1);
    assertThat(err.toString()).contains("none.wav");
    assertThat(Files.readString(json)).isEqualTo(older);
  }

  /** /dev/full answers every write with "no space left on device" (Linux, full(4)). */
  @Test
  void aReviewIsToldEvenWhereItsFileFailsAfterTheWork() throws IOException {
    assumeTrue(Files.exists(Path.of("/dev/full")));
    assertThat(run("review", take("[]"), "--json", "/dev/full")).isEqualTo(2);
    assertThat(out.toString()).contains("All ").contains("notes were right");
    assertThat(err.toString().lines().filter(line -> line.startsWith("neckway:")))
        .containsExactly(
            "neckway: /dev/full: there is no room left; make room, or name a file on another disk");
  }

  @Test
  void pipesAreNotWaitedFor() throws Exception {
    Path pipe = folder.resolve("pipe");
    assertThat(new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor()).isZero();
    assertThat(run("review", pipe.toString())).isEqualTo(2);
    assertThat(
            Main.run(
                new PrintWriter(out), new PrintWriter(err), "review", "a", "--drill", "" + pipe))
        .isEqualTo(2);
    assertThat(err.toString().lines())
        .hasSize(2)
        .allMatch(line -> line.contains("pipe: is a pipe or a device"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"100", "1e300", "-1"})
  void firstBeatOutsideTheTakeIsOneLine(String seconds) throws IOException {
    assertThat(run("review", take("[]"), "--first-beat", seconds)).isEqualTo(2);
    assertThat(err.toString()).contains("lies outside this take").contains("leave it out");
    assertThat(err.toString().lines()).hasSize(1);
  }

  @Test
  void aReviewThatCannotBeWrittenIsOneLine() throws IOException {
    String take = take("[]");
    Path json = folder.resolve("nowhere").resolve("review.json");
    assertThat(run("review", take, "--json", json.toString())).isEqualTo(2);
    assertThat(err.toString().lines()).hasSize(1);
    assertThat(out.toString()).isEmpty();
  }

  @Test
  void aFirstBeatThatIsNoTimeIsOneLine() throws IOException {
    String take = take("[]");
    assertThat(run("review", take, "--first-beat", "NaN")).isEqualTo(2);
    assertThat(err.toString().lines()).hasSize(1);
    assertThat(err.toString()).contains("--first-beat");
  }
}
