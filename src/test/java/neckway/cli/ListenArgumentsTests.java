package neckway.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.Arrays;
import neckway.file.sound.WavWriter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is unusable is said in one line before anything is opened or played. */
class ListenArgumentsTests {
  @TempDir Path folder;
  private final StringWriter err = new StringWriter();

  private String complaint(String... args) {
    StringWriter out = new StringWriter();
    assertThat(Main.run(new PrintWriter(out), new PrintWriter(err), args)).isEqualTo(2);
    assertThat(out.toString()).isEmpty();
    assertThat(err.toString().lines()).hasSize(1);
    return err.toString();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      textBlock =
          """
          listen;no drill
          listen --key G --shapes major --start soon;first-note
          listen --key G --shapes major --start 3 --start 4;given twice
          review x.wav --key G --shapes major --start first-note;--start first-note
          listen --key G --shapes major --click-volume 80;0 to 50
          listen --key G --shapes nonsense;nonsense
          listen --key G --shapes major --vamp --backing band.wav;leave one of them out
          listen --key G --shapes major --vamp --start first-note;counts in
          listen --key G --shapes major --vamp --chords X;--chords
          listen --key G --shapes major --vamp --feel 5/4;4/4-swung
          listen --key G --shapes major --chords twelve-bar;give --vamp
          listen --key G --shapes major --backing-tempo 92;give --backing FILE
          listen --key G --shapes major --clicks;--vamp or --backing
          listen --key G --shapes major --vamp --backing-volume 101;0 to 100
          listen --key G --shapes major --backing none.wav --backing-tempo 92 --backing-first-beat 1;none.wav
          listen --key G --shapes major --backing x.wav --backing-tempo 12;20 to 400
          listen --key G --shapes major --backing x.wav --backing-slower 1.5;0.25 to 1
          listen --key G --shapes major --backing x.wav --backing-first-beat -1;seconds from its beginning
          listen --key G --shapes major --backing README.md --backing-tempo 92 --backing-first-beat 1;README.md
          listen --key G --shapes major --backing test-audio/clean-run.wav --backing-tempo 92 --backing-first-beat 500;beyond its end
          listen --key G --shapes major --backing test-audio/clean-run.wav --backing-tempo 40 --backing-first-beat 1 --backing-slower 0.4;20 to 400
          listen --key G --shapes major --calls;two shapes or more
          listen --key G --shapes major,dorian --calls --start first-note;--start first-note together with --calls
          listen --key G --shapes major,dorian --calls --vamp;--calls together with a backing
          listen --key G --shapes major,dorian --calls --rounds 3;has no rounds
          listen --key G --shapes major,dorian --seed 3;--seed: give --calls too
          listen --key G --shapes major,dorian --no-tone;--no-tone: give --calls too
          review test-audio/clean-run.wav --key G --shapes major --beside test-audio/clean-run.wav --beside-once;--first-beat
          """)
  void argumentsThatCannotBe(String line, String said) {
    String[] args = line.split(" ");
    String complaint =
        complaint(
            Arrays.stream(args).map(a -> a.equals("G") ? "G major" : a).toArray(String[]::new));
    assertThat(complaint).contains(said);
  }

  @Test
  void reviewThatCouldNotBeWrittenIsSaidBeforeTheRun() {
    String json = folder.resolve("no").resolve("review.json").toString();
    assertThat(complaint("listen", "--key", "G major", "--shapes", "major", "--json", json))
        .contains("review.json")
        .contains("folder does not exist");
  }

  @Test
  void whatIsPlayedIsNotWrittenOverTheRecordingItComesFrom() {
    String own = folder.resolve("take.backing.wav").toString();
    new WavWriter(Path.of(own), 48_000, WavWriter.Coding.PCM_16).finish();
    assertThat(
            complaint(
                "listen",
                "--key",
                "G major",
                "--shapes",
                "major",
                "--backing",
                own,
                "--save",
                folder.resolve("take.wav").toString()))
        .contains("take.backing.wav");
  }
}
