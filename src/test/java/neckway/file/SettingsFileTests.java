package neckway.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import neckway.drill.Drill;
import neckway.drill.PlayableDrill;
import neckway.neck.BadInput;
import neckway.neck.Key;
import neckway.neck.Neck;
import neckway.neck.Shape;
import neckway.neck.Tuning;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SettingsFileTests {
  @TempDir private Path folder;

  private Path file() {
    return folder.resolve("inner").resolve("settings.json");
  }

  private SettingsFile kept() {
    SettingsFile settings = SettingsFile.at(file());
    settings.put("name", "Böhm Größe");
    settings.put("flag", true);
    settings.put("whole", 125);
    settings.put("share", 0.25);
    settings.put("drill", drill());
    settings.save();
    return settings;
  }

  private static PlayableDrill drill() {
    return new Drill(
            Optional.of("Mine"),
            Tuning.STANDARD,
            Neck.USUAL_FRETS,
            Key.parse("A major"),
            List.of(Shape.MAJOR, Shape.DORIAN),
            java.util.OptionalInt.of(5),
            List.of(),
            List.of(),
            3,
            Drill.USUAL_PULSE)
        .playable();
  }

  private List<String> files() throws IOException {
    try (Stream<Path> all = Files.list(file().getParent())) {
      return all.map(path -> path.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  void nothingKeptYetIsAsUsual() {
    SettingsFile settings = SettingsFile.at(file());
    assertThat(settings.complaint()).isEmpty();
    assertThat(settings.text("name")).isEmpty();
    assertThat(settings.flag("flag", true)).isTrue();
    assertThat(settings.flag("flag", false)).isFalse();
    assertThat(settings.drill("drill")).isEmpty();
  }

  @Test
  void whatWasPutIsThereAgainAndNothingElseIsLeftBehind() throws IOException {
    kept();
    SettingsFile again = SettingsFile.at(file());
    assertThat(again.text("name")).contains("Böhm Größe");
    assertThat(again.flag("flag", false)).isTrue();
    assertThat(again.whole("whole", 100, 300)).hasValue(125);
    assertThat(again.number("share", 0, 1)).hasValue(0.25);
    assertThat(again.drill("drill")).contains(drill());
    assertThat(files()).containsExactly("settings.json");
  }

  @Test
  void eachOfTwoWindowsKeepsWhatItChangedAndLeavesTheOthers() {
    kept();
    SettingsFile one = SettingsFile.at(file());
    SettingsFile other = SettingsFile.at(file());
    one.put("whole", 130);
    one.put("flag", true);
    one.save();
    other.put("name", "of the other");
    other.save();
    SettingsFile again = SettingsFile.at(file());
    assertThat(again.whole("whole", 100, 300)).hasValue(130);
    assertThat(again.text("name")).contains("of the other");
    one.put("flag", false);
    one.save();
    assertThat(SettingsFile.at(file()).text("name")).contains("of the other");
    assertThat(SettingsFile.at(file()).flag("flag", true)).isFalse();
  }

  @Test
  void valuesOutOfBoundsOrOfTheWrongKindCountAsLeftOut() {
    SettingsFile settings = kept();
    assertThat(settings.whole("whole", 200, 300)).isEmpty();
    assertThat(settings.whole("name", 0, 9)).isEmpty();
    assertThat(settings.number("share", 0.5, 1)).isEmpty();
    assertThat(settings.text("whole")).isEmpty();
    assertThat(settings.flag("name", true)).isTrue();
  }

  @Test
  void aFileCutAnywhereGivesOneLineAndTheUsualAndIsKeptAside() throws IOException {
    kept();
    byte[] whole = Files.readAllBytes(file());
    for (int length : new int[] {0, 1, whole.length / 2, whole.length - 3}) {
      byte[] cut = Arrays.copyOf(whole, length);
      Files.write(file(), cut);
      SettingsFile settings = SettingsFile.at(file());
      assertThat(settings.complaint()).isPresent();
      String line = settings.complaint().get();
      assertThat(line.lines()).hasSize(1);
      assertThat(line).contains(file().toString()).contains("usual settings").contains(".broken-");
      assertThat(settings.whole("whole", 100, 300)).isEmpty();
      Path aside = Path.of(line.replaceAll(".*kept as (.*), and the.*", "$1"));
      assertThat(aside).hasBinaryContent(cut);
      settings.save();
      assertThat(SettingsFile.at(file()).complaint()).isEmpty();
    }
    assertThat(files()).hasSize(5);
  }

  @Test
  void aDrillThatCanNoLongerBeReadIsLeftOutAlone() throws IOException {
    kept();
    String text = Files.readString(file()).replace("\"A major\"", "\"H major\"");
    Files.write(file(), text.getBytes(StandardCharsets.UTF_8));
    SettingsFile settings = SettingsFile.at(file());
    assertThat(settings.complaint()).isEmpty();
    assertThat(settings.drill("drill")).isEmpty();
    assertThat(settings.whole("whole", 100, 300)).hasValue(125);
  }

  @Test
  void whereItCannotBeWrittenOneLineSaysSoAndTheOldOneStays() throws IOException {
    Files.writeString(folder.resolve("inner"), "a file, not a folder");
    SettingsFile settings = SettingsFile.at(file());
    settings.put("whole", 1);
    assertThatThrownBy(settings::save)
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("make that folder");
    assertThat(folder.resolve("inner")).hasContent("a file, not a folder");
  }
}
