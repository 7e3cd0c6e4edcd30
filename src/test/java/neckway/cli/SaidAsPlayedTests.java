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
import java.util.stream.StreamSupport;
import neckway.file.JsonFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Takes that were played otherwise than the drill says, from the performance to the sentence. */
final class SaidAsPlayedTests {
  private static final List<String> MINOR_TO_MAJOR =
      List.of("--key", "A minor", "--shapes", "minor,major");

  @TempDir private Path folder;

  private void run(List<String> words) {
    StringWriter err = new StringWriter();
    int status =
        Main.run(
            new PrintWriter(new StringWriter()),
            new PrintWriter(err),
            words.toArray(String[]::new));
    assertThat(status).as(err.toString()).isZero();
  }

  private static List<String> words(String command, List<String> drill, String... more) {
    List<String> words = new ArrayList<>(List.of(command.split(" ")));
    words.addAll(drill);
    words.addAll(List.of(more));
    return words;
  }

  private Path take() {
    return folder.resolve("take.wav");
  }

  private void perform(List<String> drill, String... more) {
    List<String> words = words("perform --condition plain --out " + take(), drill, more);
    words.addAll(List.of("--truth", folder.resolve("truth.json").toString()));
    run(words);
  }

  private JsonNode review(String... more) {
    Path json = folder.resolve("review.json");
    run(words("review " + take() + " --json " + json, MINOR_TO_MAJOR, more));
    return JsonFile.read(json);
  }

  private static List<String> said(JsonNode review) {
    return StreamSupport.stream(review.at("/summary/words").spliterator(), false)
        .map(JsonNode::textValue)
        .toList();
  }

  @ParameterizedTest
  @CsvSource({"40", "45", "60", "95", "110", "120", "140", "160", "240"})
  void tempoThatWasPlayedIsHeardAndSaid(int tempo) {
    perform(MINOR_TO_MAJOR, "--tempo", "" + tempo, "--seed", "3");
    JsonNode review = review("--tempo", "80");
    assertThat(review.at("/grid/tempo").asDouble()).isBetween(0.99 * tempo, 1.01 * tempo);
    assertThat(review.at("/summary/right").asInt()).isEqualTo(25);
    assertThat(review.at("/summary/offMsSpread").asDouble()).isLessThan(15);
    assertThat(said(review))
        .anyMatch(
            words -> words.matches("You played at \\d+ beats a minute, and the drill is at 80.*"))
        .noneMatch(words -> words.contains("hesitated"));
  }

  @Test
  void tempoOfTheDrillIsNotTalkedAbout() {
    perform(MINOR_TO_MAJOR, "--tempo", "81", "--seed", "4");
    assertThat(said(review("--tempo", "80")))
        .noneMatch(words -> words.contains("beats a minute, and"));
  }

  @Test
  void notesABeatAreTakenAsTheyWerePlayedToAClick() {
    perform(MINOR_TO_MAJOR, "--notes-per-beat", "3", "--seed", "3");
    String first = JsonFile.read(folder.resolve("truth.json")).at("/grid/firstBeat").asText();
    JsonNode review = review("--first-beat", first);
    assertThat(said(review)).contains("You played three notes a beat where the drill has two.");
    assertThat(review.at("/summary/offMsSpread").asDouble()).isLessThan(15);
  }

  @Test
  void runBesideTheClickIsSaidAndNothingIsHeldAgainstIt() {
    perform(MINOR_TO_MAJOR, "--tempo", "95", "--seed", "3");
    String first = JsonFile.read(folder.resolve("truth.json")).at("/grid/firstBeat").asText();
    assertThat(said(review("--tempo", "80", "--first-beat", first)))
        .contains(
            "You did not keep to the click: your notes went at some 95 beats a minute, the click at"
                + " 80.")
        .noneMatch(words -> words.contains("your own pulse") || words.contains("of the beat"));
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 4})
  void roundsThatWereNotAnnouncedAreRecognised(int rounds) {
    perform(MINOR_TO_MAJOR, "--rounds", "" + rounds, "--seed", "5");
    JsonNode review = review();
    assertThat(review.at("/attempts").asInt()).isEqualTo(1);
    assertThat(review.at("/drill/rounds").asInt()).isEqualTo(rounds);
    assertThat(review.at("/steps").size()).isEqualTo(24 * rounds + 1);
    assertThat(review.at("/summary/skipped").asInt()).isZero();
    assertThat(said(review).get(0)).startsWith("You played on without a pause");
  }

  @Test
  void otherPairOfShapesIsNamed() {
    perform(List.of("--key", "A minor", "--shapes", "dorian,phrygian"), "--seed", "5");
    assertThat(said(review()))
        .hasSize(2)
        .first()
        .asString()
        .startsWith(
            "This sounds like the Dorian shape into the Phrygian one from fret 10. All 25 notes"
                + " fit that");
  }

  @Test
  void threeShapesWhereTwoWereAskedAreNamed() {
    perform(List.of("--key", "A minor", "--shapes", "dorian,phrygian,mixolydian"), "--seed", "6");
    assertThat(said(review()).get(0))
        .startsWith(
            "This sounds like the Dorian shape into the Phrygian one and the Mixolydian one");
  }

  @Test
  void ofTwoWholeTriesTheBetterOneStands() {
    perform(MINOR_TO_MAJOR, "--again-after", "24", "--seed", "3");
    JsonNode both = review();
    assertThat(both.at("/attempts").asInt()).isEqualTo(2);
    assertThat(both.at("/attempt").asInt()).as("the later of equals").isEqualTo(1);
  }

  /** Three rounds, 24 steps each and the bottom note between: the middle one is spoilt. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "{\"kind\": \"wrong\", \"step\": 30, \"midi\": 63}",
        "{\"kind\": \"skip\", \"step\": 30}",
        "{\"kind\": \"repeat\", \"step\": 30}",
        "{\"kind\": \"extra\", \"step\": 30}",
        "{\"kind\": \"late\", \"step\": 31, \"ms\": 150}"
      })
  void roundWithASlipIsNotClean(String slip) throws IOException {
    Path mistakes = Files.writeString(folder.resolve("m.json"), "[" + slip + "]");
    perform(MINOR_TO_MAJOR, "--rounds", "3", "--seed", "5", "--mistakes", mistakes.toString());
    JsonNode rounds = review("--rounds", "3").at("/rounds");
    assertThat(rounds.findValuesAsText("clean")).containsExactly("true", "false", "true");
    assertThat(rounds.at("/1/round").asInt()).isEqualTo(1);
    assertThat(rounds.at("/1/tempo").asDouble()).isBetween(79.0, 81.0);
  }

  @Test
  void roundThatWasNotPlayedIsNotClean() {
    perform(MINOR_TO_MAJOR, "--rounds", "2", "--seed", "5", "--stop-after", "30");
    assertThat(review("--rounds", "2").at("/rounds").findValuesAsText("clean"))
        .containsExactly("true", "false");
  }
}
