package neckway.desk.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import javafx.scene.Node;
import javafx.scene.control.Spinner;
import javafx.scene.input.KeyCode;
import neckway.Await;
import neckway.desk.Screen.Place;
import neckway.file.SettingsFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The keys by which the first beat of the player's own recording is corrected. */
class OwnRecordingKeysTests {
  @TempDir Path folder;

  private WholeWindow open(String kind) {
    SettingsFile kept = SettingsFile.at(folder.resolve("settings.json"));
    kept.put("backingPlays", true);
    kept.put("backingKind", kind);
    kept.put("backingFile", folder.resolve("cellar.wav").toString());
    kept.put("backingTempo", 100.0);
    kept.put("backingFirstBeat", 2.0);
    kept.save();
    WholeWindow all = new WholeWindow(folder, 1280, 800);
    all.go(Place.PLAYING);
    return all;
  }

  private static double firstBeat(WholeWindow all) {
    return all.desk.settings().number("backingFirstBeat", 0, 999).orElseThrow();
  }

  private static Spinner<?> field(WholeWindow all, String name) {
    for (Node node : all.window.scene().getRoot().lookupAll(".spinner")) {
      if (name.equals(node.getAccessibleText())) {
        return (Spinner<?>) node;
      }
    }
    throw new AssertionError(name);
  }

  @Test
  void fullStopAndCommaMoveTheFirstBeatByTenMilliseconds() {
    try (WholeWindow all = open("recording")) {
      all.press(KeyCode.PERIOD);
      all.press(KeyCode.PERIOD);
      all.press(KeyCode.COMMA);
      assertThat(firstBeat(all)).isCloseTo(2.01, within(1e-9));
      assertThat(field(all, "First beat, s").getEditor().getText()).isEqualTo("2.010");
    }
  }

  @Test
  void typedInTheFieldTheyAreLettersAndArrowsStep() {
    try (WholeWindow all = open("recording")) {
      Spinner<?> tempo = field(all, "Tempo");
      all.on(
          () -> {
            tempo.requestFocus();
            return null;
          });
      all.press(KeyCode.PERIOD);
      assertThat(firstBeat(all)).isEqualTo(2);
      all.press(KeyCode.UP);
      assertThat(all.desk.settings().number("backingTempo", 20, 400).orElseThrow())
          .isCloseTo(100.1, within(1e-9));
    }
  }

  @Test
  void theyDoNothingWhereABandPlays() {
    try (WholeWindow all = open("band")) {
      all.press(KeyCode.PERIOD);
      assertThat(firstBeat(all)).isEqualTo(2);
    }
  }

  @Test
  void fileThatIsGoneIsOneLineAndNothingIsLost() throws Exception {
    try (WholeWindow all = open("recording")) {
      all.press(KeyCode.PAGE_DOWN);
      Await.until(
          "one line is there",
          20,
          () ->
              all.on(
                  () -> {
                    all.coach.playing().frame();
                    return !all.coach.playing().line().get().isEmpty();
                  }));
      assertThat(all.begun).isEmpty();
      String line = all.on(() -> all.coach.playing().line().get());
      assertThat(line).contains("cellar.wav");
      assertThat(line.lines()).hasSize(1);
      assertThat(all.desk.settings().text("backingFile").orElseThrow()).endsWith("cellar.wav");
    }
  }
}
