package neckway.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import neckway.drill.PlayableDrill;
import neckway.file.DrillFile;
import neckway.file.JsonFile;
import neckway.neck.JoinChoice;
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
            major (shape 1): hand at fret 4
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

  /** On a left-handed guitar the nut is on the right: the same neck in a mirror. */
  @Test
  void leftHandedTheNeckIsMirroredAndTheTabIsNot() {
    assertThat(run("map", "--key", "A", "--shapes", "major", "--start", "5", "--left")).isZero();
    assertThat(out.toString())
        .contains(
            """
                  7   6   5   4
            1 E |-4-|---|(2)|---|
            2 B |-4-|---|-2-|---|
            3 G |---|-3-|---|-1-|
            4 D |(4)|---|---|-1-|
            5 A |-4-|---|---|-1-|
            6 E |-4-|---|(2)|---|
            """)
        .contains("E      |---5---7----");
  }

  @Test
  void leftHandedTheOpenStringsAreRightOfTheNut() {
    assertThat(run("map", "--key", "Em", "--shapes", "minor", "--left")).isZero();
    assertThat(out.toString())
        .contains("      3   2   1\n")
        .contains("1 E |-3-|---|---||(0)\n")
        .contains("3 G |---|-2-|---|| 0\n");
  }

  @Test
  void aChainIsSavedAsADrillWithEverythingSaid() {
    Path file = folder.resolve("drill.json");
    String[] command = {
      "map",
      "--key",
      "Am",
      "--shapes",
      "minor,major",
      "--up",
      "4",
      "--tuning",
      "drop D",
      "--frets",
      "24",
      "--save",
      file.toString()
    };
    assertThat(run(command)).isZero();
    assertThat(out.toString()).contains("saved").contains("drill.json");

    PlayableDrill drill = DrillFile.read(file);
    assertThat(drill.key()).hasToString("A minor");
    assertThat(drill.tuning()).hasToString("D2 A2 D3 G3 B3 E4");
    assertThat(drill.frets()).isEqualTo(24);
    assertThat(drill.drill().up()).containsExactly(JoinChoice.on(4, 1));
    assertThat(drill.drill().down()).containsExactly(JoinChoice.on(4, 1));

    // An older drill is replaced.
    command[6] = "3";
    assertThat(run(command)).isZero();
    assertThat(DrillFile.read(file).drill().up()).containsExactly(JoinChoice.on(3, 1));
  }

  @ParameterizedTest
  @ValueSource(strings = {"a letter", "{\"format\": \"neckway-guitar/1\"}", "[]"})
  void aFileThatIsNotADrillIsNotOverwritten(String content) throws IOException {
    Path file = Files.writeString(folder.resolve("mine.json"), content);
    Path json = folder.resolve("map.json");
    assertThat(
            run("map", "--key", "A", "--shapes", "major", "--save", "" + file, "--json", "" + json))
        .isEqualTo(2);
    assertThat(err.toString()).contains("--save", "mine.json", "is no drill");
    assertThat(err.toString().lines()).hasSize(1);
    assertThat(file).hasContent(content);
    assertThat(json).doesNotExist();
    assertThat(out.toString()).isEmpty();
  }

  @Test
  void mapAndDrillAreNotWrittenToOneFile() {
    String one = folder.resolve("one.json").toString();
    String same = folder.resolve(".").resolve("one.json").toString();
    assertThat(run("map", "--key", "A", "--shapes", "major", "--json", one, "--save", same))
        .isEqualTo(2);
    assertThat(err.toString()).contains("--save").contains("--json");
    assertThat(Path.of(one)).doesNotExist();
  }

  @Test
  void aDrillThatCannotBeWrittenLeavesTheMapUnwrittenToo() {
    Path json = folder.resolve("map.json");
    assertThat(
            run(
                "map",
                "--key",
                "A",
                "--shapes",
                "major",
                "--json",
                "" + json,
                "--save",
                "/nowhere/at/all.json"))
        .isEqualTo(2);
    assertThat(json).doesNotExist();
    assertThat(folder).isEmptyDirectory();
  }

  /** Numbers as players count the shapes: common practice, no published source. */
  @Test
  void shapesAreNumberedAndItIsSaidFromWhere() {
    assertThat(run("map", "--key", "F# minor")).isZero();
    String text = out.toString().replaceAll("\\s+", " ");
    assertThat(text)
        .contains("major (shape 1)", "Dorian (shape 2)", "Phrygian (shape 3)")
        .contains("Mixolydian (shape 4)", "minor (shape 5)")
        .contains("from the one whose lowest note is the root of A major: major 1, Dorian 2,")
        .doesNotContain("by string");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "7-string|major (shape 1 by string 7; on strings 6 to 1 Phrygian, shape 3)",
        "F#BEADGBE|major (shape 1 by string 8; on strings 6 to 1 minor, shape 5)"
      })
  void onMoreThanSixStringsItIsSaidWhichStringNamesTheShape(String tuning, String title) {
    assertThat(run("map", "--key", "G", "--tuning", tuning, "--shapes", "major")).isZero();
    assertThat(out.toString()).contains(title);
  }

  @Test
  void aShapeThatGetsTwoNotesOnlyIsNamedInASentence() {
    assertThat(run("map", "--key", "A", "--shapes", "major,dorian,phrygian", "--up", "3,3"))
        .isZero();
    assertThat(out.toString().replaceAll("\\s+", " "))
        .contains("Both ways Dorian gets only its two notes on string 3;");

    assertThat(run("map", "--key", "A", "--shapes", "major,dorian,phrygian")).isZero();
    assertThat(out.toString().split("Both ways")).hasSize(2);
  }

  @Test
  void aTuningWithANameIsCalledByIt() {
    assertThat(run("map", "--key", "A", "--tuning", "DADGBE")).isZero();
    assertThat(out.toString()).contains("strings D2 A2 D3 G3 B3 E4 (drop D), 22 frets");
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
        "map --key A_major --save x.json|--save needs --shapes",
        "map --key A_major --shapes major --save -|--save -: name a file",
        "map --key A_major --shapes major,dorian --up x|--up: \"x\" is not a join",
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
