package neckway.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import neckway.file.JsonFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class MapCommandTests {
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();
  @TempDir private Path folder;

  private int run(String... args) {
    return Main.run(new PrintWriter(out), new PrintWriter(err), args);
  }

  @Test
  void aShapeIsANeckWithFingersAndATab() {
    assertThat(run("map", "--key", "A major", "--shapes", "major", "--start", "5")).isZero();
    assertThat(out.toString())
        .contains(
            """
            major: hand at fret 4
                  4   5   6   7
            1 E |---|(2)|---|-4-|
            2 B |---|-2-|---|-4-|
            3 G |-1-|---|-3-|---|
            4 D |-1-|---|---|(4)|
            5 A |-1-|---|---|-4-|
            6 E |---|(2)|---|-4-|
            """)
        .contains(
            """
            Up:
            E      |-------------------------------------------5---7-|
            B      |-----------------------------------5---7---------|
            G      |---------------------------4---6-----------------|
            D      |-------------------4---7-------------------------|
            A      |-----------4---7---------------------------------|
            E      |---5---7-----------------------------------------|
            finger     2   4   1   4   1   4   1   3   2   4   2   4
            """);
  }

  @Test
  void aPairShowsBothFingersTheJoinsBestFirstAndTheSlide() {
    assertThat(run("map", "--key", "A major", "--shapes", "major,dorian", "--start", "5")).isZero();
    assertThat(out.toString())
        .contains("3 G |--1--|-----|-3/1-|-----|-----|--4--|-----|")
        .contains("  1. string 3, finger 1,  4 to 6   The first finger stays down")
        .contains("---4--/6---9---")
        .contains("---9---6--\\4---");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "E2 A2 D3 G3 B3 E4",
        "D2 A2 D3 G3 B3 E4",
        "D2 A2 D3 F#3 A3 D4",
        "D2 G2 D3 G3 B3 D4",
        "B1 E2 A2 D3 G3 B3 E4",
        "F#1 B1 E2 A2 D3 G3 B3 E4",
        "E1 A1 D2 G2"
      })
  void noLineIsWiderThanATerminal(String tuning) {
    for (String key : new String[] {"A major", "Bb major", "F# minor"}) {
      assertThat(run("map", "--key", key, "--tuning", tuning)).isZero();
      for (String chain : new String[] {"major", "minor,major,dorian,phrygian,mixolydian"}) {
        int status =
            run("map", "--key", key, "--tuning", tuning, "--shapes", chain, "--frets", "24");
        // Where five shapes in a row do not fit on the neck, the one line says so.
        assertThat(status).isIn(0, 2);
        assertThat(status == 0 || err.toString().contains("does not fit")).isTrue();
      }
    }
    assertThat(out.toString().lines().mapToInt(String::length).max().orElseThrow())
        .isLessThanOrEqualTo(80);
  }

  @Test
  void jsonToStandardOutputIsAllThatIsThere() {
    assertThat(run("map", "--key", "Bb major", "--json", "-")).isZero();
    String format =
        JsonFile.parse(out.toString().getBytes(StandardCharsets.UTF_8), "out")
            .get("format")
            .textValue();
    assertThat(format).isEqualTo("neckway-map/1");
    assertThat(err.toString()).isEmpty();
  }

  @Test
  void jsonToAFileComesWithTheText() {
    Path file = folder.resolve("map.json");
    assertThat(run("map", "--key", "Bb major", "--json", file.toString())).isZero();
    assertThat(JsonFile.read(file).get("key").textValue()).isEqualTo("Bb major");
    assertThat(out.toString()).startsWith("Bb major pentatonic: Bb C D F G");
  }

  @Test
  void aRunThatFailsLeavesAnOlderFileAsItWas() throws IOException {
    Path file = Files.writeString(folder.resolve("map.json"), "older");
    assertThat(
            run(
                "map",
                "--key",
                "A major",
                "--shapes",
                "major",
                "--start",
                "6",
                "--json",
                "" + file))
        .isEqualTo(2);
    assertThat(file).hasContent("older");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "map|--key",
        "map --key H|--key: \"H\" is not a key",
        "map --key A --tuning drop_Z|--tuning: \"drop Z\" is not a tuning",
        "map --key A_major --tuning E2|--tuning: a tuning of one string",
        "map --key A_major --shapes ionian|--shapes: unknown shape \"ionian\"",
        "map --key A_major --shapes major,minor|after major comes Dorian",
        "map --key A_major --start 5|--start needs --shapes",
        "map --key A_major --shapes major --start 6|fret 5 or 17",
        "map --key A_major --shapes major --start six|--start",
        "map --key A_major --frets 30|frets 30",
        "map --key A_major --shapes major,dorian --up x|--up: \"x\" is no join",
        "map --key A_major --shapes major,dorian --up 7|up: string 7",
        "map --key A_major --json /nowhere/at/all.json|its folder does not exist"
      })
  void badInputIsOneLine(String command, String words) {
    String[] args = command.split(" ");
    for (int i = 0; i < args.length; i++) {
      args[i] = args[i].replace('_', ' ');
    }
    assertThat(run(args)).isEqualTo(2);
    assertThat(err.toString().lines()).hasSize(1);
    assertThat(err.toString()).startsWith("neckway: ").contains(words);
    assertThat(out.toString()).isEmpty();
  }
}
