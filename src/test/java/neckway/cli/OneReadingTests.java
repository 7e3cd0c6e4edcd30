package neckway.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import neckway.desk.read.ClipOutput;
import neckway.desk.students.StudentsModel;
import neckway.drill.PlayableDrill;
import neckway.file.DrillFile;
import neckway.sound.Clip;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A folder that the window has read is not read anew by the command line, nor the other way. */
class OneReadingTests {
  private static final Path AUDIO = Path.of("test-audio");

  /** Reviews are set back to this time; one that is written anew has another. */
  private static final FileTime LONG_AGO = FileTime.from(Instant.parse("2001-01-01T00:00:00Z"));

  @TempDir private Path folder;
  private Path into;

  private static final ClipOutput SILENT =
      new ClipOutput() {
        @Override
        public void play(Clip clip, Ended ended) {
          throw new AssertionError("nothing is to be heard here");
        }

        @Override
        public void stop() {
          // nothing sounds
        }

        @Override
        public long framesHeard() {
          return 0;
        }
      };

  @BeforeEach
  void recordings() throws IOException {
    into = folder.resolve("Neckway");
    for (String name : List.of("clean-run.wav", "three-slips.wav", "clean-run.drill.json")) {
      Files.copy(AUDIO.resolve(name), folder.resolve(name));
    }
  }

  private void byTheWindow() {
    PlayableDrill drill = DrillFile.read(folder.resolve("clean-run.drill.json"));
    StudentsModel model =
        new StudentsModel(
            () -> drill,
            SILENT,
            () -> 0.1,
            Runnable::run,
            Runnable::run,
            said -> assertThat(said).isEmpty());
    model.open(folder);
    assertThat(model.students().get()).hasSize(2);
  }

  private void byTheCommandLine() {
    StringWriter err = new StringWriter();
    String drill = folder.resolve("clean-run.drill.json").toString();
    int status =
        Main.run(
            new PrintWriter(new StringWriter()),
            new PrintWriter(err),
            "review",
            folder.toString(),
            "--drill",
            drill,
            "--into",
            into.toString());
    assertThat(status).as(err.toString()).isZero();
  }

  private List<Path> made(String ending) throws IOException {
    try (Stream<Path> files = Files.list(into)) {
      return files.filter(f -> f.toString().endsWith(ending)).toList();
    }
  }

  private void setBack(String ending, int count) throws IOException {
    assertThat(made(ending)).hasSize(count);
    for (Path each : made(ending)) {
      Files.setLastModifiedTime(each, LONG_AGO);
    }
  }

  private void assertNothingMadeAnew(String ending) throws IOException {
    for (Path each : made(ending)) {
      assertThat(Files.getLastModifiedTime(each)).as("%s", each).isEqualTo(LONG_AGO);
    }
  }

  @Test
  void whatTheWindowReadTheCommandLineDoesNotReadAnew() throws IOException {
    byTheWindow();
    setBack(".review.json", 2);
    byTheCommandLine();
    assertNothingMadeAnew(".review.json");
  }

  @Test
  void whatTheCommandLineReadTheWindowDoesNotReadAnew() throws IOException {
    byTheCommandLine();
    setBack(".review.json", 2);
    byTheWindow();
    assertNothingMadeAnew(".review.json");
  }
}
