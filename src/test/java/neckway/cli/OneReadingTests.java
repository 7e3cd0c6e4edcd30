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

  /** What the command line says of where its drills come from. */
  private String told = "read against the drill files in the folder";

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
    PlayableDrill drill = DrillFile.read(AUDIO.resolve("missed-shift.drill.json"));
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
    int status =
        Main.run(
            new PrintWriter(new StringWriter()),
            new PrintWriter(err),
            "review",
            folder.toString(),
            "--into",
            into.toString());
    assertThat(status).as(err.toString()).isZero();
    assertThat(err.toString()).contains(told);
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

  /** One after the other, the window first; nothing is read anew by the command line. */
  private void assertReadOnce() throws IOException {
    byTheWindow();
    setBack(".review.json", 2);
    byTheCommandLine();
    assertNothingMadeAnew(".review.json");
  }

  @Test
  void whatTheWindowReadTheCommandLineDoesNotReadAnew() throws IOException {
    assertReadOnce();
  }

  @Test
  void whatTheCommandLineReadTheWindowDoesNotReadAnew() throws IOException {
    byTheCommandLine();
    setBack(".review.json", 2);
    byTheWindow();
    assertNothingMadeAnew(".review.json");
  }

  @Test
  void drillsThatAreToldApartAreToldApartOnce() throws IOException {
    Files.copy(AUDIO.resolve("three-slips.drill.json"), folder.resolve("three-slips.drill.json"));
    assertReadOnce();
    assertThat(Files.readString(into.resolve("table.csv")))
        .contains("Minor into major (a guess)", "slowly (a guess)");
  }

  @Test
  void listIsReadOnce() throws IOException {
    Files.copy(AUDIO.resolve("three-slips.drill.json"), folder.resolve("three-slips.drill.json"));
    Files.writeString(
        folder.resolve("list.csv"),
        "file,drill,name\nclean-run.wav,clean-run.drill.json,Ada\n"
            + "three-slips.wav,three-slips.drill.json,Bo\n");
    told = "read by its list.csv";
    assertReadOnce();
    assertThat(Files.readString(into.resolve("table.csv"))).contains("Ada,ok").contains("Bo,ok");
  }

  /** A drill that is named goes before what lies in the folder. */
  @Test
  void drillThatIsNamedIsTheOneForAll() throws IOException {
    Files.copy(AUDIO.resolve("three-slips.drill.json"), folder.resolve("three-slips.drill.json"));
    StringWriter err = new StringWriter();
    String[] named = {
      "review",
      "" + folder,
      "--drill",
      "" + folder.resolve("clean-run.drill.json"),
      "--into",
      "" + into
    };
    assertThat(Main.run(new PrintWriter(new StringWriter()), new PrintWriter(err), named)).isZero();
    assertThat(err.toString()).doesNotContain("drill files");
    assertThat(Files.readString(into.resolve("table.csv")))
        .doesNotContain("a guess")
        .doesNotContain("Minor into major");
  }

  @Test
  void folderThatNamesNoDrillIsOneLine() throws IOException {
    Files.delete(folder.resolve("clean-run.drill.json"));
    StringWriter err = new StringWriter();
    String[] none = {"review", "" + folder, "--into", "" + into};
    assertThat(Main.run(new PrintWriter(new StringWriter()), new PrintWriter(err), none))
        .isEqualTo(Complaints.UNUSABLE);
    assertThat(err.toString().strip()).contains("no drill: ").hasLineCount(1);
  }
}
