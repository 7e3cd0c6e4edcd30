package neckway.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import neckway.drill.PlayableDrill;
import neckway.neck.BadInput;
import neckway.neck.JoinChoice;
import neckway.neck.Tuning;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DrillFileTests {
  private static final String LEAST =
      """
      {"format": "neckway-drill/1", "key": "G major", "route": {"shapes": ["major", "dorian"]}}
      """;

  private static final String WHOLE =
      """
      { "format": "neckway-drill/1", "title": "Major into Dorian",
        "tuning": ["E2","A2","D3","G3","B3","E4"], "frets": 22, "key": "G major",
        "scale": "pentatonic",
        "route": { "shapes": ["major","dorian"], "start": 3,
                   "up": [{"string": 3, "finger": 1}], "down": [{"string": 5, "finger": 4}] },
        "rounds": 2,
        "pulse": { "tempo": 92.5, "notesPerBeat": 3, "beatsPerBar": 3, "countIn": 6 } }
      """;

  @TempDir private Path folder;

  private static PlayableDrill parse(String text) {
    return DrillFile.fromJson(
        JsonFile.parse(text.getBytes(StandardCharsets.UTF_8), "a.json"), "a.json");
  }

  @Test
  void aFeelIsReadAndWritten() {
    String swung =
        WHOLE.replace(
            "\"notesPerBeat\": 3", "\"notesPerBeat\": 2, \"swing\": 0.62, \"offsetBeats\": 1.5");
    PlayableDrill drill = parse(swung);
    assertThat(drill.pulse().swing()).isEqualTo(0.62);
    assertThat(drill.pulse().offsetBeats()).isEqualTo(1.5);
    assertThat(parse(DrillFile.toJson(drill).toString())).isEqualTo(drill);
    assertThat(DrillFile.toJson(parse(LEAST)).path("pulse").has("swing")).isFalse();
  }

  @ParameterizedTest
  @CsvSource({
    "'\"notesPerBeat\": 3, \"swing\": 0.6', 'pulse.swing: 0.6: 3 notes a beat cannot be paired'",
    "'\"notesPerBeat\": 2, \"swing\": 0.8', 'pulse.swing'",
    "'\"notesPerBeat\": 2, \"offsetBeats\": 0.3', 'pulse.offsetBeats: 0.3: no note is there'"
  })
  void aFeelThatCannotBeIsRefused(String pulse, String complaint) {
    assertThatThrownBy(() -> parse(WHOLE.replace("\"notesPerBeat\": 3", pulse)))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining(complaint);
  }

  @Test
  void theLeastDrillHasTheDefaults() {
    PlayableDrill drill = parse(LEAST);

    assertThat(drill.title()).isEqualTo("G major: major to Dorian");
    assertThat(drill.tuning()).isEqualTo(Tuning.STANDARD);
    assertThat(drill.frets()).isEqualTo(22);
    assertThat(drill.rounds()).isEqualTo(1);
    assertThat(drill.start()).isEqualTo(3);
    assertThat(drill.drill().up()).containsExactly(JoinChoice.on(3, 1));
    assertThat(drill.pulse().tempo()).isEqualTo(80);
    assertThat(drill.pulse().notesPerBeat()).isEqualTo(2);
    assertThat(drill.pulse().beatsPerBar()).isEqualTo(4);
    assertThat(drill.pulse().countIn()).isEqualTo(4);
    assertThat(drill.route().steps().get(0).place()).hasToString("6:3");
  }

  @Test
  void everyFieldIsRead() {
    PlayableDrill drill = parse(WHOLE);

    assertThat(drill.title()).isEqualTo("Major into Dorian");
    assertThat(drill.start()).isEqualTo(3);
    assertThat(drill.drill().up()).containsExactly(JoinChoice.on(3, 1));
    assertThat(drill.drill().down()).containsExactly(JoinChoice.on(5, 4));
    assertThat(drill.rounds()).isEqualTo(2);
    assertThat(drill.pulse().tempo()).isEqualTo(92.5);
    assertThat(drill.pulse().notesPerBeat()).isEqualTo(3);
    assertThat(drill.pulse().beatsPerBar()).isEqualTo(3);
    assertThat(drill.pulse().countIn()).isEqualTo(6);
  }

  @ParameterizedTest
  @ValueSource(strings = {LEAST, WHOLE})
  void whatIsWrittenIsReadAgain(String text) throws IOException {
    PlayableDrill drill = parse(text);
    Path file = folder.resolve("drill.json");

    DrillFile.write(file, drill);
    PlayableDrill again = DrillFile.read(file);

    assertThat(DrillFile.toJson(again)).isEqualTo(DrillFile.toJson(drill));
    assertThat(again.route()).isEqualTo(drill.route());
    try (var files = Files.list(folder)) {
      assertThat(files).containsExactly(file);
    }
  }

  @Test
  void whatIsWrittenSaysWhatWasLeftOutAndIsTheSameRoute() {
    PlayableDrill drill = parse(LEAST);
    JsonNode route = DrillFile.toJson(drill).path("route");

    assertThat(route.path("start").intValue()).isEqualTo(3);
    assertThat(route.path("up").path(0).path("string").intValue()).isEqualTo(3);
    assertThat(route.path("up").path(0).path("finger").intValue()).isEqualTo(1);
    assertThat(route.path("down")).isEqualTo(route.path("up"));
    assertThat(parse(JsonFile.text(DrillFile.toJson(drill))).route()).isEqualTo(drill.route());
  }

  @Test
  void fieldsThatAreNotKnownArePassedOver() {
    ObjectNode json = DrillFile.toJson(parse(LEAST));
    json.put("mood", "blue").putObject("more").put("x", 1);
    assertThat(DrillFile.toJson(DrillFile.fromJson(json, "a.json")))
        .isEqualTo(DrillFile.toJson(parse(LEAST)));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "\"drop D\"",
        "\"DADGBE\"",
        "[\"D\",\"A\",\"D\",\"G\",\"B\",\"E\"]",
        "[\"drop D\"]"
      })
  void aTuningMayBeNamedAsPlayersNameIt(String tuning) {
    assertThat(parse(with("tuning", tuning)).tuning()).hasToString("D2 A2 D3 G3 B3 E4");
  }

  @Test
  void aKeyMayBeWrittenAsOnAChordSheet() {
    assertThat(parse(with("key", "\"Em\"")).key()).hasToString("E minor");
  }

  @Test
  void nullIsLeftOut() {
    assertThat(parse(with("rounds", "null")).rounds()).isEqualTo(1);
  }

  /** What stands where in the least drill, replaced, and the words that have to be in the line. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "format|\"neckway-drill/2\"|format: \"neckway-drill/2\"",
        "format|null|format: is missing",
        "key|null|key: is missing",
        "key|\"H major\"|key: \"H major\" is not a key",
        "key|5|key: 5 should be text",
        "scale|\"blues\"|scale: \"blues\"",
        "frets|11|frets: 11 should be a whole number from 12 to 24",
        "frets|25|frets: 25",
        "frets|\"22\"|frets: \"22\" should be a whole number",
        "rounds|0|rounds: 0 should be a whole number from 1 to 99",
        "rounds|100|rounds: 100",
        "rounds|1.5|rounds: 1.5",
        "rounds|true|rounds: true",
        "tuning|[\"E2\"]|tuning: a tuning of one string",
        "tuning|[\"E2\",\"A2\",\"D3\",\"X3\"]|tuning: \"X3\" is not a note",
        "tuning|[1,2,3,4]|tuning: 1 should be text",
        "tuning|\"E2 A2\"|tuning: a tuning of 2 strings",
        "tuning|\"drop Z\"|tuning: \"drop Z\" is not a tuning",
        "tuning|5|tuning: 5 should be a list",
        "tuning|[]|tuning: a tuning of 0 strings",
        "title|7|title: 7 should be text",
        "route|null|route.shapes: is missing",
        "route|[]|route: [] should be an object",
        "route|{\"shapes\": []}|route: 0 shapes",
        "route|{\"shapes\": [\"lydian\"]}|route.shapes: unknown shape \"lydian\"",
        "route|{\"shapes\": [\"major\",\"minor\"]}|after major comes Dorian",
        "route|{\"shapes\": [\"major\"], \"start\": 4}|route: start 4",
        "route|{\"shapes\": [\"major\"], \"start\": -1}|route.start: -1",
        "route|{\"shapes\": [\"major\"], \"up\": [{\"string\": 3}]}|route: up: 1 join",
        "route|{\"shapes\": [\"major\",\"dorian\"], \"up\": [{}]}|route.up[0].string: is missing",
        "route|{\"shapes\": [\"major\",\"dorian\"], \"up\": [3]}|route.up[0]: 3 should be",
        "route|{\"shapes\": [\"major\",\"dorian\"], \"up\": [{\"string\": 7}]}|route: up: string 7",
        "route|{\"shapes\": [\"major\",\"dorian\"], \"down\": [{\"string\": 2, \"finger\": 1}]}"
            + "|route: down: no join",
        "route|{\"shapes\": [\"major\",\"dorian\"], \"up\": [{\"string\": 3, \"finger\": 5}]}"
            + "|route.up[0].finger: 5",
        "pulse|{\"tempo\": 0}|pulse.tempo: 0 should be a number from 20 to 400",
        "pulse|{\"tempo\": 1000}|pulse.tempo: 1000",
        "pulse|{\"tempo\": \"fast\"}|pulse.tempo: \"fast\"",
        "pulse|{\"notesPerBeat\": 0}|pulse.notesPerBeat: 0",
        "pulse|{\"notesPerBeat\": 9}|pulse.notesPerBeat: 9",
        "pulse|{\"beatsPerBar\": 17}|pulse.beatsPerBar: 17",
        "pulse|{\"countIn\": -1}|pulse.countIn: -1",
        "pulse|4|pulse: 4 should be an object"
      })
  void whatCannotBeUsedIsNamedByFileAndField(String field, String value, String words) {
    assertThatThrownBy(() -> parse(with(field, value)))
        .isInstanceOf(BadInput.class)
        .hasMessageStartingWith("a.json: ")
        .hasMessageContaining(words)
        .hasMessageNotContaining("\n");
  }

  private static String with(String field, String value) {
    ObjectNode json = (ObjectNode) JsonFile.parse(LEAST.getBytes(StandardCharsets.UTF_8), "least");
    json.set(field, JsonFile.parse(value.getBytes(StandardCharsets.UTF_8), "value"));
    return json.toString();
  }

  @Test
  void whatIsNoJsonIsNamedByLineAndColumn() throws IOException {
    Path file = folder.resolve("broken.json");
    Files.writeString(file, "{\"format\": \"neckway-drill/1\",\n  key: 3}");
    assertThatThrownBy(() -> DrillFile.read(file))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("broken.json: line 2, column 3")
        .hasMessageNotContaining("\n");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "[]", "3", "{} {}", "{", "\u0000\u0001"})
  void whatIsNoObjectIsSaid(String text) throws IOException {
    Path file = folder.resolve("odd.json");
    Files.writeString(file, text);
    assertThatThrownBy(() -> DrillFile.read(file))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("odd.json")
        .hasMessageNotContaining("\n");
  }

  @Test
  void aMissingFileAndAFolderAreSaid() {
    assertThatThrownBy(() -> DrillFile.read(folder.resolve("none.json")))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("none.json: there is no such file");
    assertThatThrownBy(() -> DrillFile.read(folder))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("is a folder");
  }
}
