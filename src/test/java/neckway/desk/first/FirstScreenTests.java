package neckway.desk.first;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import java.util.function.Function;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Labeled;
import javafx.scene.input.KeyCode;
import neckway.desk.Desk;
import neckway.desk.DeskFrame;
import neckway.desk.FxWindow;
import neckway.desk.Screen;
import neckway.desk.Screen.Place;
import neckway.desk.choose.ChoosingScreen;
import neckway.desk.play.SoundCheck;
import neckway.file.SettingsFile;
import neckway.neck.Shape;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The questions of the first start, in the window, by keyboard. */
final class FirstScreenTests {
  @TempDir Path folder;
  private final AtomicInteger listening = new AtomicInteger();

  private final SoundCheck check =
      new SoundCheck() {
        @Override
        public void start(Optional<String> input, Consumer<Report> reports) {
          listening.incrementAndGet();
        }

        @Override
        public void stop(Runnable then) {
          listening.set(0);
          then.run();
        }
      };

  private Desk desk;

  private FxWindow opened(int width, int height, int percent) {
    return FxWindow.open(
        () -> {
          desk = new Desk(SettingsFile.at(folder.resolve("settings.json")));
          desk.look().text(percent);
          Map<Place, Function<Desk, Screen>> screens = new EnumMap<>(Place.class);
          screens.put(Place.CHOOSING, ChoosingScreen::new);
          DeskFrame frame = new DeskFrame(desk, screens);
          frame.before(new FirstScreen(new FirstModel(desk, frame::begin), check));
          Scene scene = frame.scene(width, height);
          frame.prepare();
          return scene;
        });
  }

  private static String shown(FxWindow window) {
    return FxWindow.on(
        () -> ((Labeled) window.scene().getRoot().lookup(".first-question")).getText());
  }

  @Test
  void threeAnswersByKeyboardLeadToTheFirstDrill() {
    try (FxWindow window = opened(1280, 800, 100)) {
      assertThat(shown(window)).contains("guitar");
      assertThat(listening).hasValue(1);
      window.press(KeyCode.SPACE);
      assertThat(shown(window)).contains("shapes");
      assertThat(listening).hasValue(0);
      FxWindow.on(
          () -> {
            window.scene().getRoot().lookupAll(".check-box").stream()
                .map(node -> (CheckBox) node)
                .filter(box -> box.getText().endsWith("minor") || box.getText().endsWith("major"))
                .forEach(box -> box.setSelected(true));
            return null;
          });
      window.press(KeyCode.SPACE);
      assertThat(shown(window)).contains("neck");
      window.press(KeyCode.SPACE);
      assertThat(desk.drill().drill().shapes()).containsExactly(Shape.MINOR, Shape.MAJOR);
      assertThat(desk.notice().get()).contains("first drill");
      assertThat(window.scene().getRoot().lookup(".first-question")).isNull();
    }
  }

  @Test
  void escapeSkipsAllAndATabLeavesTheQuestions() {
    try (FxWindow window = opened(1280, 800, 100)) {
      window.press(KeyCode.ESCAPE);
      assertThat(window.scene().getRoot().lookup(".first-question")).isNull();
      assertThat(listening).hasValue(0);
      // one shape has no join; the focus is where its keys go all the same
      Node focus = FxWindow.on(() -> window.scene().getFocusOwner());
      assertThat(focus.getStyleClass()).contains("main-action");
    }
    try (FxWindow window = opened(1280, 800, 100)) {
      window.press(KeyCode.CONTROL, KeyCode.DIGIT1);
      assertThat(window.scene().getRoot().lookup(".first-question")).isNull();
    }
  }

  @ParameterizedTest
  @CsvSource({"800,560,100", "1280,800,100", "1280,800,200", "2560,1440,100"})
  void everyAnswerIsInSight(int width, int height, int percent) {
    try (FxWindow window = opened(width, height, percent)) {
      for (int question = 0; question < 3; question++) {
        window.save(
            folder.resolve(
                String.format("first-%d-%dx%d-%d.png", question, width, height, percent)));
        FxWindow.on(
            () -> {
              for (Node node : window.scene().getRoot().lookupAll(".first .button")) {
                Button button = (Button) node;
                double bottom = button.localToScene(button.getLayoutBounds()).getMaxY();
                assertThat(bottom).as(button.getText()).isLessThanOrEqualTo(height);
                assertThat(button.getWidth())
                    .as(button.getText())
                    .isGreaterThanOrEqualTo(button.prefWidth(-1) - 1);
              }
              return null;
            });
        window.press(KeyCode.SPACE);
      }
    }
  }
}
