package neckway.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import neckway.file.OutputFiles.Kind;
import neckway.neck.BadInput;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

final class OutputFilesTests {
  private static final String REVIEW = "{\"format\": \"neckway-review/1\"}";

  @TempDir private Path folder;
  private Path take;

  @BeforeEach
  void aTakeIsThere() throws IOException {
    take = folder.resolve("take.wav");
    // RIFF, four bytes of size and WAVE (Multimedia Programming Interface 1.0, 1991)
    Files.write(take, "RIFF\u0001\u0002\n\u0003WAVEfmt ".getBytes(StandardCharsets.ISO_8859_1));
  }

  private OutputFiles reading() {
    return OutputFiles.ofCommand(false).reads("the take", Optional.of(take));
  }

  @ParameterizedTest
  @ValueSource(strings = {"take.wav", "none/../take.wav", "soft.json", "hard.json", "up/take.wav"})
  void whatIsReadIsNeverWrittenByWhateverWayItIsNamed(String name) throws IOException {
    Files.createSymbolicLink(folder.resolve("soft.json"), take);
    Files.createLink(folder.resolve("hard.json"), take);
    Files.createSymbolicLink(folder.resolve("up"), folder);
    assertThatThrownBy(
            () -> reading().writes("--json", Optional.of(folder.resolve(name)), Kind.REVIEW))
        .isInstanceOf(BadInput.class)
        .hasMessageStartingWith(
            "--json " + folder.resolve(name) + ": is the same file as the take");
  }

  @Test
  void overwriteDoesNotLetAnInputBeLost() {
    assertThatThrownBy(
            () ->
                OutputFiles.ofCommand(true)
                    .reads("the take", Optional.of(take))
                    .writes("--json", Optional.of(take), Kind.REVIEW))
        .hasMessageContaining("is the same file as");
  }

  @Test
  void twoOutputsAreTwoFilesEvenWhereNeitherIsThereYet() throws IOException {
    Files.createSymbolicLink(folder.resolve("up"), folder);
    OutputFiles files = reading().writes("--out", Optional.of(folder.resolve("new.wav")), Kind.WAV);
    assertThatThrownBy(
            () -> files.writes("--truth", Optional.of(folder.resolve("up/new.wav")), Kind.REVIEW))
        .hasMessageContaining("is the same file as --out");
  }

  @Test
  void oldFileOfTheSameKindIsReplaced() throws IOException {
    Path old = Files.writeString(folder.resolve("old.json"), REVIEW);
    assertThatCode(() -> reading().writes("--json", Optional.of(old), Kind.REVIEW))
        .doesNotThrowAnyException();
    OutputFiles.check(take, Kind.WAV);
  }

  @ParameterizedTest
  @CsvSource({
    "notes, REVIEW, no review",
    "{\"format\": \"neckway-drill/1\"}, GUITAR, no guitar profile",
    "{\"format\": 7}, DRILL, no drill",
    "RIFF, MAP, no map"
  })
  void oldFileOfAnotherKindStaysUnlessAsked(String content, Kind kind, String no)
      throws IOException {
    Optional<Path> old = Optional.of(Files.writeString(folder.resolve("old.json"), content));
    assertThatThrownBy(() -> reading().writes("--json", old, kind))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("is there already and is " + no)
        .hasMessageContaining("--overwrite");
    assertThatThrownBy(() -> OutputFiles.check(old.get(), kind))
        .hasMessageContaining(no)
        .hasMessageNotContaining("--");
    assertThatCode(() -> OutputFiles.ofCommand(true).writes("--json", old, kind))
        .doesNotThrowAnyException();
  }

  @Test
  void emptyFileHoldsNothingToLose() throws IOException {
    OutputFiles.check(Files.createFile(folder.resolve("empty.json")), Kind.DRILL);
  }

  @Test
  void foldersAreLookedAtBeforeTheWork() throws IOException {
    assertThatThrownBy(() -> OutputFiles.check(folder.resolve("none/a.json"), Kind.DRILL))
        .hasMessageContaining("its folder does not exist");
    assertThatThrownBy(() -> OutputFiles.check(folder, Kind.DRILL)).hasMessageContaining("folder");
    Path file = Files.createFile(folder.resolve("file"));
    assertThatThrownBy(() -> OutputFiles.check(file.resolve("a.json"), Kind.DRILL))
        .hasMessageContaining("is no folder");
  }

  @ParameterizedTest
  @CsvSource({"a.mp3, a.wav", "a, a.wav", "a.b.flac, a.b.wav", ".wave, .wave.wav"})
  void soundIsWrittenAsWavAndSaysSo(String name, String instead) {
    assertThatThrownBy(
            () ->
                OutputFiles.ofCommand(true)
                    .writes("--out", Optional.of(folder.resolve(name)), Kind.WAV))
        .hasMessageEndingWith("sound is written as a WAV file; name one, such as " + instead);
  }

  @Test
  void onlyJsonGoesToStandardOutput() {
    assertThatThrownBy(() -> reading().writes("--out", Optional.of(Path.of("-")), Kind.WAV))
        .hasMessage("--out -: name a file; only --json writes to standard output");
  }

  @Test
  void deviceTakesEverything() {
    Path nothing = Path.of("/dev/null");
    if (Files.exists(nothing)) {
      assertThatCode(
              () ->
                  reading()
                      .writes("--json", Optional.of(nothing), Kind.REVIEW)
                      .writes("--truth", Optional.of(nothing), Kind.REVIEW))
          .doesNotThrowAnyException();
      assertThat(Files.isRegularFile(nothing)).isFalse();
    }
  }
}
