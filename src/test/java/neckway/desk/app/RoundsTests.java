package neckway.desk.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalInt;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import neckway.desk.Screen.Place;
import neckway.player.plan.Mistake;
import neckway.review.Review;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The rounds of a session stay, side by side, and each can be read. */
class RoundsTests {
  @TempDir Path folder;

  private static List<Mistake> leftOut(int step) {
    return List.of(new Mistake.Slip(Mistake.Kind.SKIP, step, OptionalInt.empty()));
  }

  private static List<ToggleButton> buttons(WholeWindow all) {
    return all.on(
        () ->
            all.window.scene().getRoot().lookupAll(".round").stream()
                .map(node -> (ToggleButton) node)
                .toList());
  }

  @Test
  void everyRoundCanBeReadAndTheyStandSideBySide() {
    try (WholeWindow all = new WholeWindow(folder, 1280, 800)) {
      all.go(Place.PLAYING);
      all.press(KeyCode.PAGE_DOWN);
      Review first = all.round(0, leftOut(9));
      Review second = all.round(1, List.of());
      all.over();
      assertThat(all.place()).isEqualTo(Place.READING);
      assertThat(all.coach.reading().take().get().orElseThrow().review()).isSameAs(second);
      List<ToggleButton> rounds = buttons(all);
      assertThat(rounds).hasSize(2);
      assertThat(rounds.get(0).getText()).contains("24 of 25").contains("80 beats a minute");
      assertThat(rounds.get(1).getText()).contains("25 of 25");
      assertThat(rounds.get(1).isSelected()).isTrue();
      all.click(rounds.get(0));
      assertThat(all.coach.reading().take().get().orElseThrow().review()).isSameAs(first);
      assertThat(rounds.get(0).isSelected()).isTrue();
      assertThat(rounds.get(1).isSelected()).isFalse();
      all.press(KeyCode.R);
      assertThat(all.coach.reading().take().get().orElseThrow().review()).isSameAs(second);
      // those of the next run come behind them
      all.press(KeyCode.PAGE_DOWN);
      all.round(0, List.of());
      all.over();
      assertThat(buttons(all)).hasSize(3);
      assertThat(buttons(all).get(2).isSelected()).isTrue();
    }
  }

  @Test
  void oneRoundHasNoRow() {
    try (WholeWindow all = new WholeWindow(folder, 1280, 800)) {
      all.go(Place.PLAYING);
      all.press(KeyCode.PAGE_DOWN);
      all.round(0, List.of());
      all.over();
      assertThat(buttons(all)).isEmpty();
    }
  }

  @Test
  void newcomersFirstRunIsOneRoundAndWhatIsKeptStays() throws Exception {
    try (WholeWindow all = new WholeWindow(folder.resolve("new"), 1280, 800)) {
      all.go(Place.PLAYING);
      all.press(KeyCode.PAGE_DOWN);
      assertThat(all.begun.get(0).rounds().repeat()).isFalse();
    }
    Path kept = Files.createDirectories(folder.resolve("kept"));
    Files.writeString(kept.resolve("settings.json"), "{\"format\":\"neckway-settings/1\"}");
    try (WholeWindow all = new WholeWindow(kept, 1280, 800)) {
      all.go(Place.PLAYING);
      all.press(KeyCode.PAGE_DOWN);
      assertThat(all.begun.get(0).rounds().repeat()).isTrue();
    }
  }

  @Test
  void slowerAndFasterSayThatTheDrillIsChangedAndUndoEachOther() {
    try (WholeWindow all = new WholeWindow(folder, 1280, 800)) {
      all.go(Place.PLAYING);
      all.press(KeyCode.PAGE_DOWN);
      all.round(0, List.of());
      all.over();
      all.press(KeyCode.S);
      assertThat(all.desk.notice().get()).contains("74 beats a minute").contains("80 before");
      all.round(0, List.of());
      all.over();
      all.press(KeyCode.F);
      assertThat(all.begun).hasSize(3);
      assertThat(all.begun.get(2).drill().pulse().tempo()).isEqualTo(80);
      assertThat(all.desk.notice().get()).contains("80 beats a minute").contains("74 before");
    }
  }
}
