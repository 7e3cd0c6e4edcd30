package neckway.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import neckway.neck.BadInput;
import neckway.neck.GuitarString;
import neckway.neck.Tuning;
import neckway.string.GuitarProfile;
import neckway.string.StringProfile;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GuitarFileTests {
  @TempDir private Path folder;
  private Path file;

  @BeforeEach
  void name() {
    file = folder.resolve("guitar.json");
  }

  /** B of the strings of a solid-body electric from the lowest up, in millionths. */
  private static GuitarProfile profile(Tuning tuning) {
    double[] millionths = {132, 66, 49, 108, 40, 14, 12};
    List<StringProfile> strings = new ArrayList<>();
    for (GuitarString string : tuning.strings()) {
      strings.add(
          new StringProfile(
              string,
              tuning.openMidi(string),
              -1.5 + strings.size(),
              Math.log(1e-6 * millionths[strings.size()]),
              0.05,
              4));
    }
    return new GuitarProfile(strings);
  }

  @Test
  void whatIsWrittenIsReadAgain() {
    for (Tuning tuning : List.of(Tuning.STANDARD, Tuning.parse("B1 E2 A2 D3 F#3 B3 Eb4"))) {
      GuitarProfile profile = profile(tuning);
      GuitarFile.write(file, profile, tuning);
      GuitarProfile read = GuitarFile.read(file, tuning);
      assertThat(read.strings()).hasSameSizeAs(profile.strings());
      for (StringProfile string : profile.strings()) {
        StringProfile again = read.of(string.string());
        assertThat(again.openMidi()).isEqualTo(string.openMidi());
        assertThat(again.plucks()).isEqualTo(string.plucks());
        assertThat(again.centsOff()).isCloseTo(string.centsOff(), within(0.05));
        assertThat(again.spread()).isCloseTo(string.spread(), within(5e-5));
        assertThat(again.lnStiffness()).isCloseTo(string.lnStiffness(), within(1e-5));
      }
    }
  }

  /**
   * By hand: string 4 at its fifth fret has 49e-6 * 2^(5/6) = 87.31e-6 against 108e-6 of the open
   * third; ln of their ratio is 0.2127, in standard deviations of 0.05 sqrt 2 it is 3.01.
   */
  @Test
  void pairsSayHowWellTheyAreToldApart() {
    JsonNode pairs = GuitarFile.toJson(profile(Tuning.STANDARD), Tuning.STANDARD).path("pairs");
    assertThat(pairs).hasSize(5);
    assertThat(pairs.path(2).path("strings").toString()).isEqualTo("[4,3]");
    assertThat(pairs.path(2).path("apart").asDouble()).isCloseTo(3.01, within(0.006));
    assertThat(pairs.path(2).path("told").asText()).isEqualTo("fairly");
    assertThat(pairs.path(0).path("told").asText()).isEqualTo("well");
  }

  @Test
  void unknownFieldsArePassedOver() {
    ObjectNode json = GuitarFile.toJson(profile(Tuning.STANDARD), Tuning.STANDARD);
    json.put("colour", "red");
    ((ObjectNode) json.path("strings").path(0)).putObject("pending").put("plucks", 3);
    json.remove("pairs");
    assertThat(GuitarFile.fromJson(json, "g").strings()).hasSize(6);
  }

  @Test
  void tuningOfAnotherDrillIsOneLineThatSaysBoth() {
    GuitarFile.write(file, profile(Tuning.STANDARD), Tuning.STANDARD);
    assertThatThrownBy(() -> GuitarFile.read(file, Tuning.parse("D2 A2 D3 G3 B3 E4")))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("guitar.json: tuning")
        .hasMessageContaining("E2 A2 D3 G3 B3 E4")
        .hasMessageContaining("D2 A2 D3 G3 B3 E4");
    assertThatThrownBy(() -> GuitarFile.read(file, Tuning.parse("B1 E2 A2 D3 G3 B3 E4")))
        .isInstanceOf(BadInput.class);
    // the same pitches by other names are the same guitar
    assertThat(GuitarFile.read(file, Tuning.parse("E2 A2 D3 G3 Cb4 Fb4")).strings()).hasSize(6);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          "format":"neckway-guitar/1" | "format":"neckway-drill/1" | format: "neckway-drill/1"
          "format":"neckway-guitar/1", | '' | format: is missing
          "tuning" | "tunings" | tuning: is missing
          "tuning":["E2" | "tuning":["H2" | tuning: "H2" is not a note
          "string":5 | "string":9 | strings[1].string: 9 should be a whole number from 1 to 6
          "string":5,"open":"A2" | "string":4 | strings: string 5 is missing
          "string":5 | "number":5 | strings[1].string: is missing
          "strings":[{ | "strungs":[{ | strings: string 6 is missing
          "stiffness":1.32E-4 | "stiffness":0 | strings[0].stiffness: 0 should be a number
          "stiffness":1.32E-4 | "stiffness":-1.32E-4 | strings[0].stiffness: -1.32E-4 should be
          "stiffness":1.32E-4 | "stiffness":"NaN" | strings[0].stiffness: "NaN" should be a number
          "stiffness":1.32E-4 | "stiffness":NaN | is not JSON there
          "stiffness":1.32E-4 | "stiffness":132 | strings[0].stiffness: 132 should be
          "stiffness":1.32E-4 | "limp":1.32E-4 | strings[0].stiffness: is missing
          "spread":0.05 | "spread":0 | strings[0].spread: 0 should be
          "spread":0.05 | "spreads":0 | strings[0].spread: is missing
          "open":"E2" | "open":"F2" | strings[0].open: F2 should be E2
          "plucks":4 | "plucks":-4 | strings[0].plucks: -4 should be
          """)
  void badFileIsOneLineThatNamesTheFieldAndTheMend(String good, String bad, String words)
      throws IOException {
    String text = GuitarFile.toJson(profile(Tuning.STANDARD), Tuning.STANDARD).toString();
    int at = text.indexOf(good);
    assertThat(at).isNotNegative();
    Files.writeString(file, text.substring(0, at) + bad + text.substring(at + good.length()));
    assertThatThrownBy(() -> GuitarFile.read(file))
        .isInstanceOf(BadInput.class)
        .hasMessageStartingWith(file.toString())
        .hasMessageContaining(words)
        .satisfies(e -> assertThat(e.getMessage()).doesNotContain("\n"));
  }

  @Test
  void sameStringTwiceIsOneLine() {
    ObjectNode json = GuitarFile.toJson(profile(Tuning.STANDARD), Tuning.STANDARD);
    ((ObjectNode) json.path("strings").path(1)).put("string", 6).put("open", "E2");
    assertThatThrownBy(() -> GuitarFile.fromJson(json, "g"))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("string 6 stands there twice");
  }

  @Test
  void whatIsNoJsonIsOneLine() throws IOException {
    Files.write(file, "RIFF....WAVE".getBytes(StandardCharsets.UTF_8));
    assertThatThrownBy(() -> GuitarFile.read(file))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("guitar.json");
    Files.writeString(file, "[]");
    assertThatThrownBy(() -> GuitarFile.read(file))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("holds no JSON object");
    assertThatThrownBy(() -> GuitarFile.read(folder.resolve("none.json")))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("no such file");
  }
}
