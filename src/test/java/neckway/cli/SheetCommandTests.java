package neckway.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import neckway.cli.text.TabText;
import neckway.drill.Drills;
import neckway.drill.PlayableDrill;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class SheetCommandTests {
  @TempDir private Path folder;
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int sheet(Path file, String... words) {
    List<String> all = new ArrayList<>(List.of("sheet", "--key", "G major"));
    all.addAll(List.of("--shapes", "major,dorian", "--start", "3", "--up", "3", "--down", "5"));
    all.addAll(List.of("--out", file.toString()));
    all.addAll(List.of(words));
    return Main.run(new PrintWriter(out), new PrintWriter(err), all.toArray(String[]::new));
  }

  private static byte[] head(Path file, int bytes) throws Exception {
    return Arrays.copyOf(Files.readAllBytes(file), bytes);
  }

  /** Each kind by the bytes with which it begins: ISO 32000-1, PNG (W3C 2003), MIDI 1.0. */
  @Test
  void theEndingDecides() throws Exception {
    assertThat(sheet(folder.resolve("a.PDF"))).as(err.toString()).isZero();
    assertThat(sheet(folder.resolve("a.png"))).as(err.toString()).isZero();
    assertThat(sheet(folder.resolve("a.mid"))).as(err.toString()).isZero();
    assertThat(sheet(folder.resolve("a.musicxml"))).as(err.toString()).isZero();
    assertThat(head(folder.resolve("a.PDF"), 5)).isEqualTo("%PDF-".getBytes("US-ASCII"));
    assertThat(head(folder.resolve("a.png"), 8))
        .isEqualTo(new byte[] {(byte) 0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A});
    assertThat(head(folder.resolve("a.mid"), 4)).isEqualTo("MThd".getBytes("US-ASCII"));
    assertThat(Files.readString(folder.resolve("a.musicxml"))).contains("<score-partwise");
    assertThat(out.toString().lines()).hasSize(4);
    assertThat(out.toString()).contains("G major: major to Dorian");
  }

  @Test
  void theTextHasTheTabAndHowToPractise() throws Exception {
    Path file = folder.resolve("a.txt");
    assertThat(sheet(file, "--rounds", "3")).as(err.toString()).isZero();
    String text = Files.readString(file);
    PlayableDrill drill = Drills.example();
    assertThat(text)
        .contains(String.join("\n", TabText.of(drill.neck(), drill.route(), 78)))
        .contains("hand at fret", "Begin slowly, at about 40 beats a minute", "3 rounds");
    assertThat(text.lines()).allMatch(line -> line.length() <= 78);
  }

  @ParameterizedTest
  @ValueSource(strings = {"a.doc", "a", "pdf", "a.xml", "a.pdf.", "a.midi"})
  void anotherEndingIsOneLine(String name) throws Exception {
    assertThat(sheet(folder.resolve(name))).isEqualTo(2);
    assertThat(err.toString().strip())
        .doesNotContain("\n")
        .contains("--out", name, ".pdf, .png, .musicxml, .mid or .txt");
    try (Stream<Path> files = Files.list(folder)) {
      assertThat(files).isEmpty();
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"a.pdf", "a.png", "a.musicxml", "a.mid", "a.txt"})
  void anOlderSheetIsReplacedAndNoOtherFile(String name) throws Exception {
    Path file = folder.resolve(name);
    assertThat(sheet(file)).as(err.toString()).isZero();
    assertThat(sheet(file, "--rounds", "2")).as(err.toString()).isZero();
    byte[] letter = "Dear neighbour, the rehearsal begins at eight.\n".getBytes("US-ASCII");
    Files.write(file, letter);
    assertThat(sheet(file)).isEqualTo(2);
    assertThat(err.toString().strip()).doesNotContain("\n").contains(name, "--overwrite");
    assertThat(Files.readAllBytes(file)).isEqualTo(letter);
    assertThat(sheet(file, "--overwrite")).isZero();
    assertThat(Files.readAllBytes(file)).isNotEqualTo(letter);
  }

  @Test
  void theDrillThatIsReadIsNotWrittenOver() throws Exception {
    Path drill = folder.resolve("drill.txt");
    String json =
        "{\"format\":\"neckway-drill/1\",\"key\":\"G major\",\"route\":{\"shapes\":[\"major\"]}}";
    Files.writeString(drill, json);
    String name = drill.toString();
    PrintWriter errors = new PrintWriter(err);
    String[] words = {"sheet", "--drill", name, "--out", name, "--overwrite"};
    assertThat(Main.run(new PrintWriter(out), errors, words)).isEqualTo(2);
    assertThat(err.toString()).contains("is the same file as --drill");
    assertThat(Files.readString(drill)).isEqualTo(json);
  }

  @ParameterizedTest
  @ValueSource(strings = {"a.pdf", "a.png", "a.musicxml", "a.mid", "a.txt"})
  void aFolderThatIsNotThereIsOneLine(String name) {
    assertThat(sheet(folder.resolve("none").resolve(name))).isEqualTo(2);
    assertThat(err.toString().strip()).doesNotContain("\n").contains("folder does not exist");
  }

  /** A Linux device that is always full. */
  @ParameterizedTest
  @ValueSource(strings = {"a.pdf", "a.png", "a.musicxml", "a.mid", "a.txt"})
  void aFullDiskIsOneLine(String name) throws Exception {
    Path full = Path.of("/dev/full");
    assumeThat(full).exists();
    Path link = Files.createSymbolicLink(folder.resolve(name), full);
    int status = sheet(link);
    Files.delete(link);
    assertThat(status).isEqualTo(2);
    assertThat(err.toString().strip()).doesNotContain("\n").contains(name, "no room left");
  }

  @Test
  void itIsTextInUtf8() throws Exception {
    Path drill = folder.resolve("drill.json");
    Files.writeString(
        drill,
        "{\"format\":\"neckway-drill/1\",\"title\":\"Überübung\",\"key\":\"G major\","
            + "\"route\":{\"shapes\":[\"major\"]}}");
    Path file = folder.resolve("a.txt");
    String[] words = {"sheet", "--drill", drill.toString(), "--out", file.toString()};
    assertThat(Main.run(new PrintWriter(out), new PrintWriter(err), words)).isZero();
    assertThat(Files.readString(file, StandardCharsets.UTF_8)).startsWith("Drill: Überübung\n");
  }
}
