package neckway.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import neckway.log.Runs;
import neckway.words.Tongue;
import neckway.words.Wording;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What commands print and complain of where the machine speaks German. */
final class GermanCommandTests {
  private static final List<String> DRILL =
      List.of("--key", "G major", "--shapes", "major,dorian", "--start", "3");

  @TempDir private Path folder;
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(Tongue tongue, String... words) {
    out.getBuffer().setLength(0);
    err.getBuffer().setLength(0);
    return Wording.in(tongue, () -> Main.run(new PrintWriter(out), new PrintWriter(err), words));
  }

  private int german(String... words) {
    return run(Tongue.GERMAN, words);
  }

  private static String[] withDrill(String command, String... more) {
    return Stream.of(List.of(command), DRILL, List.of(more))
        .flatMap(List::stream)
        .toArray(String[]::new);
  }

  private String in(String name) {
    return folder.resolve(name).toString();
  }

  private static void noEnglish(String text) {
    assertThat(text).isNotBlank().doesNotContainPattern("(?i)\\b(the|is|and|not|of|from|give)\\b");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "map --key A --start 3;--start braucht --shapes: Nenn die Griffbilder",
        "review;keine Aufnahme: Nenn eine, einen Ordner voll oder eine --list",
        "review a.wav --beside-starts 2;--beside-starts 2.0: Nenn die Aufnahme dazu mit --beside",
        "review a.wav b.wav --into x --first-beat 1;--first-beat: ist für eine Aufnahme",
        "compare a.json;eine Auswertung: Nenn zwei bis zwanzig von einer Übung",
        "log --last 0;--last 0: Nimm 1 oder mehr",
        "log remove;log remove: Nenn die Durchgänge, wie 'neckway log' sie zeigt",
        "log check --data nowhere;nowhere: Dort ist kein Durchgang festgehalten",
        "perform --key A --shapes major --out a.wav --bits 17;--bits 17: Nimm 16, 24 oder 32",
        "sheet --key A --shapes major --out a.doc;--out a.doc: Die Endung sagt",
        "listen --key A --shapes major --click-volume 60;--click-volume 60.0: Nimm 0 bis 50 Prozent"
      })
  void complaintsAreInGerman(String command, String complaint) {
    assertThat(german(command.split(" "))).isEqualTo(Complaints.UNUSABLE);
    assertThat(err.toString()).startsWith("neckway: " + complaint).hasLineCount(1);
    noEnglish(err.toString());
  }

  @Test
  void whatWasMadeIsSaidWithACommaInItsNumbers() {
    assertThat(german(withDrill("perform", "--out", in("take.wav")))).isZero();
    assertThat(out.toString())
        .containsPattern("take\\.wav: 25 Noten in \\d+,\\d s, erster Schlag bei \\d,\\d{3} s");
    assertThat(german(withDrill("vamp", "--tempo", "92.5", "--bars", "1", "--out", in("v.wav"))))
        .isZero();
    assertThat(out.toString()).contains("v.wav: ein Takt in G major mit 92,5 Schlägen pro Minute");
    assertThat(german("tune", "--take", in("take.wav"))).isZero();
    assertThat(out.toString()).containsPattern("G2 +[-+]\\d,\\d Cent +\\d+,\\d\\d Hz");
  }

  /** A sheet is known for one in either language, and nothing else is. */
  @Test
  void aSheetReplacesASheetOfAnotherLanguage() throws IOException {
    String[] sheet = withDrill("sheet", "--out", in("sheet.txt"));
    for (Tongue tongue : List.of(Tongue.GERMAN, Tongue.ENGLISH, Tongue.GERMAN)) {
      assertThat(run(tongue, sheet)).as(err.toString()).isZero();
    }
    assertThat(Files.readString(folder.resolve("sheet.txt"))).startsWith("Übung: G major");
    Files.writeString(folder.resolve("sheet.txt"), "Überall steht etwas\n");
    assertThat(german(sheet)).isEqualTo(Complaints.UNUSABLE);
  }

  /** Days are written as people write them, in files as ISO 8601 has them. */
  @Test
  void theLogAndWhatIsOpenAreInGerman() throws IOException {
    Files.writeString(
        folder.resolve("runs.jsonl"), Runs.line("one", 0) + "\n" + Runs.line("two", 1) + "\n");
    String data = in("data");
    assertThat(german("log", "import", in("runs.jsonl"), "--data", data)).isZero();
    assertThat(out.toString()).endsWith("Durchgänge übernommen: 2, übergangen: 0\n");
    assertThat(german("log", "--data", data)).isZero();
    String day = String.format("%1$td.%1$tm.%1$tY %1$tH:%1$tM  ", Runs.day(1));
    assertThat(out.toString()).startsWith(day).contains("25 von 25 richtig, 1 von 1 sauber");
    assertThat(german("reach", "--data", data, "--day", "2026-05-06")).isZero();
    assertThat(out.toString())
        .contains(" am 6.5.2026, auf dem Weg zu 100 Schlägen pro Minute")
        .contains("2 von 2 Runden sauber, bestes Tempo ")
        .contains(String.format("zuletzt am %1$te.%1$tm.%1$tY", Runs.day(1)).replace(".0", "."));
    noEnglish(out.toString());
    assertThat(german("plan", "--data", data, "--day", "2026-05-06")).isZero();
    assertThat(out.toString()).contains("min  Aufwärmen").contains(" Schläge pro Minute, ");
    noEnglish(out.toString());
    assertThat(german("log", "remove", "one", "--data", data)).isZero();
    assertThat(out.toString()).isEqualTo("1 Durchgang gelöscht\n");
    assertThat(german("warmup", "--data", data, "--print")).isZero();
    assertThat(out.toString()).startsWith("Fang leise an und spiel weich.");
    noEnglish(out.toString());
  }

  @Test
  void aGuitarAndARecordingAreToldInGerman() {
    assertThat(german("calibrate", "test-audio/calibration.wav", "--out", in("g.json"))).isZero();
    assertThat(out.toString()).startsWith("Saite ").contains("Das Profil ist in ");
    noEnglish(out.toString());
    String take = "test-audio/three-slips";
    String json = in("three.json");
    assertThat(german("review", take + ".wav", "--drill", take + ".drill.json", "--json", json))
        .isZero();
    assertThat(out.toString()).contains("23 von 25 Noten waren richtig.").contains("7 richtig;");
    noEnglish(out.toString());
    assertThat(german("report", json, "--out", in("r.html"))).isZero();
    assertThat(out.toString()).isEqualTo("Der Bericht ist in " + in("r.html") + ".\n");
  }
}
