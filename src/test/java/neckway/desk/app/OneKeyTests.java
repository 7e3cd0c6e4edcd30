package neckway.desk.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBoxBase;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyCode;
import neckway.Await;
import neckway.desk.Screen.Place;
import neckway.desk.page.PageView;
import neckway.desk.play.PlayingModel.State;
import neckway.drill.PlayableDrill;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** The one key means the one thing wherever the focus is, whatever was clicked before. */
@Tag("slow")
class OneKeyTests {
  private static final double WIDTH = 1280;
  private static final double HEIGHT = 800;

  @TempDir Path folder;

  private int opened;

  /** In front: playing, a live take that is read, or a recording that is read. */
  private enum Front {
    PLAY,
    READ,
    RECORDING
  }

  private WholeWindow open(Front front) {
    WholeWindow all = new WholeWindow(folder.resolve("window " + opened++), WIDTH, HEIGHT);
    all.go(Place.PLAYING);
    if (front != Front.PLAY) {
      all.press(KeyCode.PAGE_DOWN);
      all.round(0, List.of());
      all.over();
    }
    if (front == Front.RECORDING) {
      all.on(
          () -> {
            all.desk.open(all.begun.get(0).takes().orElseThrow().files().file(0));
            return null;
          });
    }
    return all;
  }

  /** What can be clicked in the window, in a fixed order; what it is called beside it. */
  private static List<Node> controls(WholeWindow all) {
    return all.on(
        () ->
            all.window.scene().getRoot().lookupAll("*").stream()
                .filter(OneKeyTests::isControl)
                .filter(OneKeyTests::isSeen)
                .toList());
  }

  private static boolean isControl(Node node) {
    return node instanceof ButtonBase && !node.getStyleClass().contains("arrow-button")
        || node instanceof ComboBoxBase<?>
        || node instanceof TextInputControl
        || node instanceof ScrollPane
        || node instanceof PageView;
  }

  private static boolean isSeen(Node node) {
    for (Node at = node; at != null; at = at.getParent()) {
      if (!at.isVisible()) {
        return false;
      }
    }
    return !node.isDisabled();
  }

  private static String name(Node node) {
    return node instanceof ButtonBase button
        ? button.getText()
        : node.getClass().getSimpleName() + " " + node.getStyleClass();
  }

  @TestFactory
  Stream<DynamicTest> oneKeyAfterAClickOnEachControl() {
    return Stream.of(Front.values())
        .flatMap(
            front -> {
              List<String> names;
              try (WholeWindow all = open(front)) {
                names = controls(all).stream().map(OneKeyTests::name).toList();
              }
              assertThat(names).hasSizeGreaterThan(8);
              return Stream.of(KeyCode.SPACE, KeyCode.PAGE_DOWN)
                  .flatMap(
                      key ->
                          java.util.stream.IntStream.range(0, names.size())
                              .mapToObj(
                                  i ->
                                      DynamicTest.dynamicTest(
                                          front + ", " + names.get(i) + ", then " + key,
                                          () -> clickThenPress(front, i, key))));
            });
  }

  private void clickThenPress(Front front, int control, KeyCode key) throws Exception {
    try (WholeWindow all = open(front)) {
      Place place = all.place();
      Node clicked = controls(all).get(control);
      all.click(clicked);
      if (all.place() != place || clicked instanceof TextInputControl && key == KeyCode.SPACE) {
        // another view, or a letter of a text
        return;
      }
      int runs = all.begun.size();
      boolean running = all.coach.playing().state().get() != State.READY;
      all.press(key);
      if (running) {
        assertThat(all.stops).as("stopped").isEqualTo(1);
        return;
      }
      // a backing is made first, in another thread
      Await.until("begun", 10, () -> all.on(() -> all.begun.size()) == runs + 1);
      assertThat(all.place()).isEqualTo(Place.PLAYING);
      all.window.settle();
      all.press(key);
      assertThat(all.stops).as("stopped by the key").isEqualTo(1);
      all.press(KeyCode.ESCAPE);
      assertThat(all.stops).as("and by Escape").isEqualTo(2);
    }
  }

  @Test
  void figuresOfTheGuessArriveWhereverTheFocusIs() {
    try (WholeWindow all = open(Front.PLAY)) {
      all.on(
          () -> {
            all.coach.playing().settings().guessFirst().set(true);
            return null;
          });
      Node box = all.window.scene().getRoot().lookup(".check-box");
      all.click(box);
      all.press(KeyCode.PAGE_DOWN);
      all.round(0, List.of());
      all.over();
      assertThat(all.coach.playing().state().get()).isEqualTo(State.GUESSING);
      all.on(
          () -> {
            all.window.scene().getRoot().lookup(".quiet").requestFocus();
            return null;
          });
      all.press(KeyCode.DIGIT2);
      all.press(KeyCode.DIGIT4);
      assertThat(all.coach.playing().guess().get()).isEqualTo("24");
      all.press(KeyCode.PAGE_DOWN);
      assertThat(all.place()).isEqualTo(Place.READING);
    }
  }

  @Test
  void enterPressesWhatTabHasLedTo() {
    try (WholeWindow all = open(Front.PLAY)) {
      for (int tab = 0; tab < 20 && !(focus(all) instanceof CheckBox); tab++) {
        all.press(KeyCode.TAB);
      }
      CheckBox box = (CheckBox) focus(all);
      boolean before = box.isSelected();
      all.press(KeyCode.ENTER);
      assertThat(box.isSelected()).isNotEqualTo(before);
      assertThat(all.begun).isEmpty();
    }
  }

  @Test
  void aButtonBeginsAndStopsForMouseAndTouch() {
    try (WholeWindow all = open(Front.PLAY)) {
      Button button = (Button) all.window.scene().getRoot().lookup(".begin");
      assertThat(button.getText()).isEqualTo("Begin");
      all.click(button);
      assertThat(all.begun).hasSize(1);
      assertThat(button.getText()).isEqualTo("Stop");
      all.click(button);
      assertThat(all.stops).isEqualTo(1);
    }
  }

  @Test
  void pageUpIsNextWhereThereIsOneAndElseNothing() {
    try (WholeWindow all = open(Front.READ)) {
      PlayableDrill next = all.practice.open().next().orElseThrow().drill().orElseThrow();
      all.press(KeyCode.PAGE_UP);
      assertThat(all.place()).isEqualTo(Place.PLAYING);
      assertThat(all.desk.drill().drill()).isEqualTo(next);
      all.press(KeyCode.PAGE_UP);
      assertThat(all.begun).hasSize(1);
      assertThat(all.place()).isEqualTo(Place.PLAYING);
    }
  }

  private static Node focus(WholeWindow all) {
    return all.on(() -> all.window.scene().getFocusOwner());
  }
}
