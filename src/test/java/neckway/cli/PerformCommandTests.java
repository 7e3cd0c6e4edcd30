package neckway.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import neckway.file.JsonFile;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PerformCommandTests {
  @TempDir private Path folder;
  private StringWriter out;
  private StringWriter err;
  private Path take;
  private Path truth;

  @BeforeEach
  void name() {
    out = new StringWriter();
    err = new StringWriter();
    take = folder.resolve("take.wav");
    truth = folder.resolve("truth.json");
  }

  private int perform(String... more) {
    List<String> args = new ArrayList<>(List.of("perform", "--out", take.toString()));
    args.addAll(List.of(more));
    return Main.run(new PrintWriter(out), new PrintWriter(err), args.toArray(String[]::new));
  }

  private int performDrill(String... more) {
    List<String> args =
        new ArrayList<>(List.of("--key", "G major", "--shapes", "major,dorian", "--start", "3"));
    args.addAll(List.of("--up", "3", "--down", "5", "--truth", truth.toString()));
    args.addAll(List.of(more));
    return perform(args.toArray(String[]::new));
  }

  @Test
  void writesATakeThatOthersCanReadAndItsTruth() throws Exception {
    assertThat(performDrill("--seed", "5")).isZero();
    JsonNode said = JsonFile.read(truth);
    assertThat(said.path("format").asText()).isEqualTo("neckway-review/1");
    assertThat(said.path("notes")).hasSize(25);
    assertThat(said.path("steps"))
        .hasSize(25)
        .allMatch(s -> s.path("verdict").asText().equals("played"));
    assertThat(said.path("shifts")).hasSize(2);
    assertThat(said.path("drill").path("route").path("start").asInt()).isEqualTo(3);
    // Read back by the JDK's own sound library, which is not ours.
    try (AudioInputStream sound = AudioSystem.getAudioInputStream(take.toFile())) {
      double seconds = sound.getFrameLength() / sound.getFormat().getSampleRate();
      assertThat(seconds).isCloseTo(said.path("take").path("seconds").asDouble(), within(1e-6));
      assertThat((double) sound.getFormat().getSampleRate())
          .isEqualTo(said.path("take").path("sampleRate").asDouble());
    }
  }

  @Test
  void sameSeedSameFiles() throws IOException {
    performDrill("--seed", "5", "--condition", "dirty");
    byte[] wav = Files.readAllBytes(take);
    byte[] json = Files.readAllBytes(truth);
    performDrill("--seed", "5", "--condition", "dirty");
    assertThat(Files.readAllBytes(take)).isEqualTo(wav);
    assertThat(Files.readAllBytes(truth)).isEqualTo(json);
    performDrill("--seed", "6", "--condition", "dirty");
    assertThat(Files.readAllBytes(take)).isNotEqualTo(wav);
  }

  @Test
  void listedMistakesStandInTheTruth() throws IOException {
    Path mistakes = folder.resolve("mistakes.json");
    Files.writeString(
        mistakes,
        """
        [{"kind": "wrong", "step": 4, "midi": 53}, {"kind": "repeat", "step": 12},
         {"kind": "skip", "step": 20}, {"kind": "extra", "step": 15},
         {"kind": "shift", "round": 0, "direction": "up", "string": 1}]
        """);
    assertThat(performDrill("--mistakes", mistakes.toString())).isZero();
    JsonNode said = JsonFile.read(truth);
    assertThat(said.path("steps").path(4).path("verdict").asText()).isEqualTo("wrong");
    assertThat(said.path("steps").path(20).path("verdict").asText()).isEqualTo("skipped");
    JsonNode summary = said.path("summary");
    assertThat(summary.path("wrong").asInt()).isEqualTo(1);
    assertThat(summary.path("repeat").asInt()).isEqualTo(1);
    assertThat(summary.path("extra").asInt()).isEqualTo(1);
    assertThat(summary.path("skipped").asInt()).isEqualTo(1);
    assertThat(said.path("shifts").path(0).path("verdict").asText()).isEqualTo("moved");
    assertThat(said.path("shifts").path(0).path("string").asInt()).isEqualTo(1);
  }

  @Test
  void calibrationSequencePlaysEveryStringAndFret() {
    assertThat(perform("--calibration", "--frets", "0,5", "--truth", truth.toString())).isZero();
    JsonNode notes = JsonFile.read(truth).path("notes");
    assertThat(notes).hasSize(12);
    assertThat(notes.path(1).path("midi").asInt()).isEqualTo(45);
    assertThat(notes.path(11).path("places").path(0).path("string").asInt()).isEqualTo(1);
    double apart = notes.path(11).path("time").asDouble() - notes.path(0).path("time").asDouble();
    assertThat(apart).isCloseTo(11, within(0.25));
  }

  @ParameterizedTest
  @CsvSource({
    "--room, 7, give 0 to 1",
    "--detune, 80, give -50 to 50",
    "--condition, odd, 'give plain, clean, dirty or legato'",
    "--bits, 12, 'give 16, 24 or 32'",
    "--stop-after, -2, steps count from 0",
    "--mistakes, nowhere.json, there is no such file"
  })
  void unusableOptionIsOneLineThatNamesItAndTheMend(String option, String value, String mend) {
    assertThat(performDrill(option, value)).isEqualTo(2);
    assertThat(err.toString().lines()).hasSize(1);
    assertThat(err.toString()).contains(value).contains(mend);
    assertThat(take).doesNotExist();
  }

  @Test
  void failedRunLeavesAnOlderTakeAsItWas() throws IOException {
    Files.writeString(take, "older");
    truth = folder.resolve("missing/truth.json");
    assertThat(performDrill()).isEqualTo(2);
    assertThat(take).hasContent("older");
    truth = take;
    assertThat(performDrill()).isEqualTo(2);
    assertThat(take).hasContent("older");
    try (var files = Files.list(folder)) {
      assertThat(files).containsExactly(take);
    }
  }
}
