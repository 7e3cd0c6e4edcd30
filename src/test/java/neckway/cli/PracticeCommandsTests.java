package neckway.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import neckway.drill.PlayableDrill;
import neckway.file.DrillFile;
import neckway.file.JsonFile;
import neckway.log.Runs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The log, what is open and what comes next, as commands. */
final class PracticeCommandsTests {
  @TempDir private Path folder;
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(String... words) {
    out.getBuffer().setLength(0);
    err.getBuffer().setLength(0);
    List<String> all = new ArrayList<>(List.of(words));
    all.addAll(List.of("--data", folder.resolve("data").toString()));
    return Main.run(new PrintWriter(out), new PrintWriter(err), all.toArray(String[]::new));
  }

  private JsonNode json() {
    return JsonFile.parse(out.toString().getBytes(StandardCharsets.UTF_8), "standard output");
  }

  /** Six evenings of the same clean run. */
  private void practise() throws IOException {
    Path lines = folder.resolve("six.jsonl");
    StringBuilder text = new StringBuilder();
    for (int day = 0; day < 6; day++) {
      text.append(Runs.line("run-" + day, day)).append('\n');
    }
    Files.writeString(lines, text);
    assertThat(run("log", "import", lines.toString())).as(err.toString()).isZero();
  }

  @Test
  void importPrintsEachIdAndCounts() throws IOException {
    practise();
    assertThat(out.toString().lines())
        .containsExactly(
            "run-0", "run-1", "run-2", "run-3", "run-4", "run-5", "6 runs kept, 0 passed over");
    practise();
    assertThat(out.toString().strip()).isEqualTo("0 runs kept, 6 passed over");
    assertThat(run("log", "check")).isZero();
    assertThat(out.toString()).startsWith("6 runs, nothing wrong");
  }

  @Test
  void listShowAndRemove() throws IOException {
    practise();
    assertThat(run("log", "--last", "2", "--key", "Em")).isZero();
    assertThat(out.toString().lines()).hasSize(2).first().asString().endsWith("run-5");
    assertThat(run("log", "--key", "A")).isZero();
    assertThat(out.toString()).contains("No run is kept here yet");
    assertThat(run("log", "show", "run-3")).isZero();
    assertThat(out.toString()).contains("All 25 notes were right");
    assertThat(run("log", "remove", "run-3", "nix")).isEqualTo(2);
    assertThat(err.toString()).contains("nix").contains("nothing was removed");
    assertThat(run("log", "remove", "run-3")).isZero();
    assertThat(run("log", "show", "run-3")).isEqualTo(2);
    assertThat(run("log", "remove")).isEqualTo(2);
    assertThat(run("log", "remove", "--all")).isZero();
    assertThat(out.toString()).contains("5 runs removed");
  }

  @Test
  void whatIsOpenFollowsFromTheLog() throws IOException {
    practise();
    assertThat(run("reach", "--key", "G major", "--day", "2026-05-06", "--json", "-")).isZero();
    JsonNode reach = json();
    assertThat(reach.at("/format").textValue()).isEqualTo("neckway-reach/1");
    assertThat(reach.at("/joins"))
        .anySatisfy(
            join -> {
              assertThat(join.at("/lower").textValue()).isEqualTo("major");
              assertThat(join.at("/direction").textValue()).isEqualTo("up");
              assertThat(join.at("/string").asInt()).isEqualTo(3);
              assertThat(join.at("/rounds").asInt()).isEqualTo(6);
              assertThat(join.at("/cleanRounds").asInt()).isEqualTo(6);
              assertThat(join.at("/bestCleanTempo").asDouble()).isEqualTo(80);
              assertThat(join.at("/lastDay").textValue()).isEqualTo("2026-05-06");
              assertThat(join.at("/state").textValue()).isEqualTo("open");
            });
    assertThat(reach.at("/shapes")).hasSize(5);
    assertThat(run("reach", "--day", "2026-07-06")).isZero();
    assertThat(out.toString()).contains("string 3: 6 of 6 rounds clean, best at 80").contains("3~");
    assertThat(out.toString().lines()).allMatch(line -> line.length() <= 80);
  }

  @Test
  void planNamesDrillsThatCanBePlayed() throws IOException {
    practise();
    assertThat(run("plan", "--minutes", "25", "--day", "2026-07-06", "--json", "-")).isZero();
    JsonNode plan = json();
    assertThat(plan.at("/format").textValue()).isEqualTo("neckway-plan/1");
    int minutes = 0;
    for (JsonNode item : plan.at("/items")) {
      minutes += item.at("/minutes").asInt();
      assertThat(item.at("/why").textValue()).endsWith(".");
      if (!item.at("/drill").isNull()) {
        PlayableDrill drill = DrillFile.fromJson(item.at("/drill"), "plan");
        assertThat(drill.rounds()).isEqualTo(item.at("/rounds").asInt());
      }
    }
    assertThat(minutes).isEqualTo(25);
    assertThat(run("plan", "--day", "2026-07-06")).isZero();
    assertThat(out.toString()).contains("was open; it was last clean 61 days");
  }

  @Test
  void nothingLoggedSaysWhatToDoFirst() {
    assertThat(run("log")).isZero();
    assertThat(run("reach")).isZero();
    assertThat(out.toString()).contains("Begin with one shape that you know");
    assertThat(run("plan")).isZero();
    assertThat(out.toString()).contains("The minor shape by itself");
    assertThat(folder.resolve("data")).as("reading makes nothing").doesNotExist();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "log --last 0|--last 0: give 1 or more",
        "log show x|no run is kept there",
        "log export x|no run is kept there",
        "log import nix.jsonl|there is no such file",
        "reach --day yesterday|--day yesterday: is no day",
        "reach --key H|--key",
        "reach --target 1|--target 1: give 20 to 400",
        "plan --minutes 0|--minutes 0: give 1 to 480",
        "plan --set nix.json|there is no such file"
      })
  void badInputIsOneLine(String command, String words) {
    assertThat(run(command.split(" "))).isEqualTo(2);
    assertThat(err.toString().lines()).hasSize(1);
    assertThat(err.toString()).contains(words);
  }
}
