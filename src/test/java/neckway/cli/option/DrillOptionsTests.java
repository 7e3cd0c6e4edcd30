package neckway.cli.option;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import neckway.drill.Drill;
import neckway.drill.PlayableDrill;
import neckway.neck.BadInput;
import neckway.neck.JoinChoice;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

class DrillOptionsTests {
  @TempDir private Path folder;

  @Command(name = "any")
  private static final class Any {
    @Mixin private final DrillOptions drill = new DrillOptions();
  }

  private static DrillOptions options(String... args) {
    Any any = new Any();
    new CommandLine(any).parseArgs(args);
    return any.drill;
  }

  private static PlayableDrill drill(String words) {
    String[] args = words.split(" ");
    for (int i = 0; i < args.length; i++) {
      args[i] = args[i].replace('_', ' ');
    }
    return options(args).drill();
  }

  @Test
  void theWorkedExampleWithoutAFile() {
    DrillOptions options =
        options("--key", "G major", "--shapes", "major,dorian", "--up", "3", "--down", "5");
    assertThat(options.drill().route().steps()).hasSize(25);
    assertThat(options.drill().route().steps().get(0).place()).hasToString("6:3");
    assertThat(options.drill().pulse()).isEqualTo(Drill.USUAL_PULSE);
  }

  @Test
  void everyPart() {
    PlayableDrill drill =
        drill(
            "--key F#_minor --shapes minor,major,dorian --start 4 --up 4/1,3 --down 2,5/1"
                + " --tempo 72.5 --notes-per-beat 3 --rounds 4 --tuning D2,A2,D3,G3,B3,E4");
    assertThat(drill.drill().up()).extracting(JoinChoice::string).containsExactly(4, 3);
    assertThat(drill.drill().up().get(0)).isEqualTo(JoinChoice.on(4, 1));
    assertThat(drill.drill().down()).extracting(JoinChoice::string).containsExactly(2, 5);
    assertThat(drill.drill().down().get(1)).isEqualTo(JoinChoice.on(5, 1));
    assertThat(drill.start()).isEqualTo(4);
    assertThat(drill.pulse().tempo()).isEqualTo(72.5);
    assertThat(drill.pulse().notesPerBeat()).isEqualTo(3);
    assertThat(drill.rounds()).isEqualTo(4);
    assertThat(drill.tuning().names()).startsWith("D2");
  }

  @Test
  void keyAndTuningAsPlayersSayThem() {
    PlayableDrill drill = drill("--key f#m --shapes minor,major --tuning drop_d");
    assertThat(drill.key()).hasToString("F# minor");
    assertThat(drill.tuning()).hasToString("D2 A2 D3 G3 B3 E4");
  }

  @Test
  void aFile() throws IOException {
    Path file =
        Files.writeString(
            folder.resolve("a.json"),
            "{\"format\":\"neckway-drill/1\",\"key\":\"C major\",\"route\":{\"shapes\":[\"minor\"]}}");
    assertThat(options("--drill", file.toString()).drill().key()).hasToString("C major");
    assertThatThrownBy(() -> options("--drill", file.toString(), "--tempo", "90").drill())
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("--tempo together with --drill");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--tempo 80|no drill: give --drill FILE, or --key and --shapes",
        "--key A_major|--key A major: name its shapes too",
        "--shapes major|--shapes major: name their key too",
        "--key A_major --shapes major --tempo 0|--tempo 0",
        "--key A_major --shapes major --tempo 1000|--tempo 1000",
        "--key A_major --shapes major --tempo NaN|--tempo NaN",
        "--key A_major --shapes major --notes-per-beat 0|--notes-per-beat 0",
        "--key A_major --shapes major --rounds 100|rounds 100",
        "--key H --shapes major|--key: \"H\" is not a key",
        "--key A --shapes major --tuning drop_Z|--tuning: \"drop Z\" is not a tuning",
        "--key A_major --shapes major --tuning E2|--tuning: a tuning of one string",
        "--key A_major --shapes major,dorian --up 3/9|--up: \"3/9\" is not a join",
        "--key A_major --shapes major,dorian --up 3/2|on that string take finger 1"
      })
  void badInput(String words, String said) {
    assertThatThrownBy(() -> drill(words)).isInstanceOf(BadInput.class).hasMessageContaining(said);
  }
}
