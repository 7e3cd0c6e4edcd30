package neckway.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import neckway.drill.Drills;
import neckway.file.sound.Channel;
import neckway.file.sound.TakeReader;
import neckway.file.sound.WavWriter;
import neckway.neck.BadInput;
import neckway.words.Tongue;
import neckway.words.Wording;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is said of files where German is spoken. */
class GermanFilesTests {
  private static final int RATE = 8_000;

  /** Words that make a sentence English; none of them is a German word too. */
  private static final List<String> ENGLISH =
      List.of(" the ", " is ", " and ", " not ", " of ", " should ", " it ", " a ", " with ");

  @TempDir Path folder;

  /** What is said when something cannot be done, in German, without the folder's name. */
  private String complaint(Runnable doing) {
    BadInput bad =
        Wording.in(Tongue.GERMAN, () -> catchThrowableOfType(BadInput.class, doing::run));
    assertThat(bad).isNotNull();
    return german(bad.getMessage());
  }

  private String german(String said) {
    String words = said.replace(folder + "/", "");
    assertThat(ENGLISH).as(words).noneMatch(word -> (" " + words + " ").contains(word));
    return words;
  }

  private static JsonNode json(String text) {
    return JsonFile.parse(text.getBytes(StandardCharsets.UTF_8), "x.json");
  }

  private Path file(String name, String content) throws IOException {
    return Files.writeString(folder.resolve(name), content, StandardCharsets.ISO_8859_1);
  }

  private String drill(String json) {
    return complaint(() -> DrillFile.fromJson(json(json), "x.json"));
  }

  @Test
  void jsonThatIsSpoilt() {
    assertThat(complaint(() -> json("{\"a\": 1")))
        .isEqualTo(
            "x.json: Zeile 1, Spalte 8: hört zu früh auf; ergänze, was fehlt, oder nimm eine andere"
                + " Kopie");
    assertThat(complaint(() -> json("{\"a\" 1}")))
        .startsWith("x.json: Zeile 1, Spalte ")
        .endsWith(": Hier ist es kein JSON mehr; verbessere es hier, oder nimm eine andere Kopie");
    assertThat(complaint(() -> json("[".repeat(5_000)))).startsWith("x.json: ist kein JSON, das ");
    assertThat(complaint(() -> json(" "))).startsWith("x.json: ist leer; ");
    assertThat(drill("3")).startsWith("x.json: enthält kein JSON-Objekt; ");
  }

  /** Numbers are those of JSON, which has a point in any language. */
  @Test
  void fieldsThatAreWrong() {
    String format = "{\"format\": \"neckway-drill/1\"";
    assertThat(drill("{}"))
        .isEqualTo("x.json: format: fehlt; füg es hinzu, etwa \"format\": \"neckway-drill/1\"");
    assertThat(drill(format + ", \"key\": 3}"))
        .isEqualTo("x.json: key: 3 sollte Text in Anführungszeichen sein");
    assertThat(drill(format + ", \"key\": \"A major\", \"route\": []}"))
        .isEqualTo("x.json: route: [] sollte ein Objekt in { } sein");
    assertThat(
            drill(
                format
                    + ", \"key\": \"A major\", \"route\": {\"shapes\": [\"major\"]},"
                    + " \"pulse\": {\"swing\": 0.9}}"))
        .isEqualTo("x.json: pulse.swing: 0.9 sollte eine Zahl von 0.5 bis 0.75 sein");
    assertThat(drill("{\"format\": \"x\"}"))
        .isEqualTo("x.json: format: \"x\": Bei einer Übung steht dort \"neckway-drill/1\"");
  }

  @Test
  void mistakesOfAVirtualPlayer() {
    assertThat(
            complaint(
                () ->
                    MistakesFile.fromJson(
                        json("[{\"kind\": \"oops\"}]"), "m.json", Drills.example().route())))
        .isEqualTo(
            "m.json: Eintrag 1: kind: \"oops\" sollte wrong, skip, repeat, extra, late oder shift"
                + " sein");
  }

  @Test
  void settingsThatCannotBeRead() throws IOException {
    Path settings = file("settings.json", "{}");
    String said =
        Wording.in(Tongue.GERMAN, () -> SettingsFile.at(settings).complaint().orElseThrow());
    assertThat(german(said))
        .isEqualTo(
            "settings.json: format: sollte \"neckway-settings/1\" sein; sie bleibt als"
                + " settings.json.broken-1 erhalten, und die üblichen Einstellungen gelten");
  }

  @Test
  void filesThatCannotBeReadOrWritten() throws IOException {
    assertThat(complaint(() -> InputFile.check(folder.resolve("none.wav"))))
        .isEqualTo("none.wav: Diese Datei gibt es nicht; prüf den Namen und den Ordner");
    Path text = file("x.wav", "no sound");
    assertThat(
            complaint(
                () ->
                    OutputFiles.ofCommand(false)
                        .writes("--out", Optional.of(text), OutputFiles.Kind.WAV)))
        .isEqualTo(
            "--out x.wav: ist schon da und ist keine WAV-Datei; nenn eine andere Datei, oder"
                + " ersetz sie mit --overwrite");
    assertThat(complaint(() -> OutputFiles.check(folder.resolve("no/x.pdf"), OutputFiles.Kind.PDF)))
        .isEqualTo(
            "no/x.pdf: Den Ordner dazu gibt es nicht; leg ihn erst an, oder nenn einen anderen");
    assertThat(Wording.in(Tongue.GERMAN, () -> WriteFault.words(new AccessDeniedException("x"))))
        .isEqualTo(
            "In den Ordner dazu darf nicht geschrieben werden; nenn eine Datei in einem"
                + " anderen");
  }

  /** Each kind of file that stands in the way has its own word and article. */
  @Test
  void everyKindThatStandsInTheWayIsNamed() throws IOException {
    Path other = file("other.html", "hello");
    List<String> said = new ArrayList<>();
    for (OutputFiles.Kind kind : OutputFiles.Kind.values()) {
      if (kind != OutputFiles.Kind.WAV) {
        said.add(complaint(() -> OutputFiles.check(other, kind)));
      }
    }
    assertThat(said)
        .doesNotHaveDuplicates()
        .allMatch(words -> words.matches("other.html: ist schon da und ist keine? .*; nenn .*"));
  }

  private String take(Path take) {
    return complaint(
        () -> {
          try (TakeReader reader = TakeReader.open(take, Channel.AUTO)) {
            reader.read(new float[RATE]);
          }
        });
  }

  @Test
  void soundThatCannotBeRead() throws IOException {
    assertThat(take(file("a.wav", "hello there, this is text")))
        .isEqualTo(
            "a.wav: ist keine Klangdatei, sondern Text, der mit 'hello there, this is' beginnt;"
                + " gib WAV, AIFF, AU, FLAC, MP3, Ogg Vorbis, Opus oder M4A (AAC) an");
    assertThat(take(file("b.caf", "caff\0\1\0\0")))
        .isEqualTo(
            "b.caf: Der Klang darin ist in einer Core-Audio-Datei (CAF) und lässt sich nicht"
                + " lesen; wandle ihn in WAV oder FLAC um");
    assertThat(take(file("c.wav", "RIFF\0\0\0\0WAVEdata\4\0\0\0\0\0\0\0")))
        .isEqualTo(
            "c.wav: eine WAV-Datei ohne den Teil 'fmt ' vor dem Klang; speichere sie noch einmal als"
                + " WAV");
    assertThat(take(file("d.flac", "fLaC\0\0"))).startsWith("d.flac: Der FLAC-Kopf ist ");
    assertThat(take(file("e.m4a", "\0\0\0\u0008ftyp")))
        .startsWith("e.m4a: Dieser MP4-Datei fehlt ihr Inhaltsverzeichnis ('moov'): ");
    assertThat(take(file("f.wav", ""))).startsWith("f.wav: ist leer (0 Byte); ");
  }

  /** Seconds in a sentence have a comma. */
  @Test
  void aTakeThatIsCutShort() throws IOException {
    Path whole = folder.resolve("whole.wav");
    try (WavWriter writer = new WavWriter(whole, RATE, WavWriter.Coding.PCM_16)) {
      writer.write(new float[2 * RATE], 0, 2 * RATE);
      writer.finish();
    }
    Path half = folder.resolve("half.wav");
    Files.write(half, Arrays.copyOf(Files.readAllBytes(whole), 44 + 2 * RATE));
    String said =
        Wording.in(
            Tongue.GERMAN,
            () -> {
              try (TakeReader reader = TakeReader.open(half, Channel.AUTO)) {
                return reader.warning().orElseThrow();
              }
            });
    assertThat(german(said))
        .isEqualTo(
            "half.wav: abgeschnitten: Der Kopf der Datei verspricht 2,00 s Klang, und 1,00 s sind"
                + " da; die werden genommen");
  }
}
