package neckway.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.Arrays;
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
}
