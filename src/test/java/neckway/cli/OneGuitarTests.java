package neckway.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import neckway.file.JsonFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Several takes of the virtual player on one guitar. */
class OneGuitarTests {
  /** How far two learnings of one string may differ, and two guitars differ in some string. */
  private static final double SAME = 0.08;

  @TempDir private Path folder;

  private String run(String... args) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int status = Main.run(new PrintWriter(out), new PrintWriter(err), args);
    assertThat(status).as(err.toString()).isZero();
    return out.toString();
  }

  private Path learn(String guitarSeed, String seed) {
    Path take = folder.resolve("calibration-" + guitarSeed + "-" + seed + ".wav");
    Path guitar = folder.resolve("guitar-" + guitarSeed + "-" + seed + ".json");
    run(
        "perform",
        "--calibration",
        "--condition",
        "plain",
        "--model",
        "electric",
        "--guitar-seed",
        guitarSeed,
        "--seed",
        seed,
        "--tail",
        "1",
        "--out",
        take.toString());
    run("calibrate", take.toString(), "--out", guitar.toString());
    return guitar;
  }

  private static List<Double> stiffness(Path guitar) {
    List<Double> all = new ArrayList<>();
    for (JsonNode string : JsonFile.read(guitar).path("strings")) {
      all.add(Math.log(string.path("stiffness").doubleValue()));
    }
    return all;
  }

  private static double farthest(Path one, Path other) {
    double most = 0;
    for (int i = 0; i < 6; i++) {
      most = Math.max(most, Math.abs(stiffness(one).get(i) - stiffness(other).get(i)));
    }
    return most;
  }

  @Test
  void oneGuitarSeedIsOneGuitarWhateverTheSeed() {
    Path guitar = learn("9", "1");
    assertThat(farthest(guitar, learn("9", "2"))).isLessThan(SAME);
    assertThat(farthest(guitar, learn("10", "1"))).isGreaterThan(SAME);
  }

  @Test
  void whatOneTakeTeachesOfTheGuitarTellsTheShiftsOfAnother() throws IOException {
    Path guitar = learn("9", "1");
    String take = folder.resolve("take.wav").toString();
    Path mistakes = folder.resolve("mistakes.json");
    Files.writeString(
        mistakes, "[{\"kind\": \"shift\", \"round\": 0, \"direction\": \"up\", \"string\": 5}]");
    String[] drill = {"--key", "G major", "--shapes", "major,dorian", "--up", "3", "--down", "4"};
    run(
        with(
            drill,
            "perform",
            "--condition",
            "plain",
            "--model",
            "electric",
            "--guitar-seed",
            "9",
            "--seed",
            "3",
            "--mistakes",
            mistakes.toString(),
            "--out",
            take));
    String said = run(with(drill, "review", take, "--guitar", guitar.toString(), "--json", "-"));
    JsonNode shifts = JsonFile.parse(said.getBytes(), "the review").path("shifts");
    assertThat(shifts.path(0).path("verdict").asText()).isEqualTo("moved");
    assertThat(shifts.path(0).path("string").asInt()).isEqualTo(5);
    assertThat(shifts.path(1).path("verdict").asText()).isEqualTo("made");
  }

  private static String[] with(String[] drill, String... more) {
    List<String> all = new ArrayList<>(List.of(more));
    all.addAll(List.of(drill));
    return all.toArray(String[]::new);
  }
}
