package neckway.desk.sound;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import javafx.application.Platform;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Control;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.stage.Window;
import neckway.desk.Desk;
import neckway.desk.DeskFrame;
import neckway.desk.FxWindow;
import neckway.desk.Screen;
import neckway.desk.Screen.Place;
import neckway.desk.Texts;
import neckway.desk.app.DeskApp;
import neckway.desk.sound.GuitarModel.Stage;
import neckway.file.RoundTripFile;
import neckway.file.SettingsFile;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The sound room in a window without a screen, by keyboard alone. */
class SoundScreenTests {
  @TempDir private Path folder;
  private final FakeDevices devices = new FakeDevices();
  private Desk desk;
  private SoundModel room;
  private FxWindow window;

  @BeforeEach
  void open() {
    window =
        FxWindow.open(
            () -> {
              desk = new Desk(SettingsFile.at(folder.resolve("settings.json")));
              RoundTripFile trips = new RoundTripFile(folder.resolve("round-trip.json"));
              room = new SoundModel(desk, devices, trips, Runnable::run, Platform::runLater);
              Map<Place, Function<Desk, Screen>> screens = new EnumMap<>(DeskApp.screens());
              screens.put(Place.SOUND_ROOM, d -> new SoundScreen(d, room));
              return new DeskFrame(desk, screens).scene(1280, 800);
            });
    window.press(KeyCode.CONTROL, KeyCode.DIGIT4);
    window.settle();
  }

  @AfterEach
  void close() {
    window.close();
  }

  private Node focus() {
    return FxWindow.on(() -> window.scene().getFocusOwner());
  }

  /** Presses Tab until a button has the focus. */
  private void tabTo(String words) {
    for (int tabs = 0; tabs < 30; tabs++) {
      if (focus() instanceof Button button && button.getText().equals(words)) {
        return;
      }
      window.press(KeyCode.TAB);
      window.settle();
    }
    throw new AssertionError("no Tab leads to " + words);
  }

  @Test
  void arrowKeysTakeAnotherInput() {
    assertThat(desk.router().current().get()).isEqualTo(Place.SOUND_ROOM);
    assertThat(focus()).isInstanceOf(ComboBox.class);
    window.press(KeyCode.DOWN);
    window.settle();
    assertThat(room.input().get()).isEqualTo("Table interface");
    assertThat(desk.settings().text("input")).contains("Table interface");
  }

  @Test
  void choiceStaysInTheBoxWhileItsDeviceIsAway() {
    window.press(KeyCode.DOWN);
    devices.inputs.remove("Table interface");
    devices.inputs.add(0, "Another one");
    FxWindow.on(
        () -> {
          room.refresh();
          return null;
        });
    window.settle();
    assertThat(((ComboBox<?>) focus()).getValue()).isEqualTo("Table interface");
    assertThat(room.input().get()).isEqualTo("Table interface");
  }

  @Test
  void roundTripAndPlucksAreReachedByTab() {
    tabTo(Texts.of("trip.measure", "5"));
    window.press(KeyCode.SPACE);
    window.settle();
    assertThat(devices.gains).containsExactly(0.05);
    tabTo(Texts.of("guitar.begin"));
    window.press(KeyCode.SPACE);
    window.settle();
    assertThat(room.guitar().stage().get()).isEqualTo(Stage.PLUCKING);
    tabTo(Texts.of("guitar.skip"));
    window.press(KeyCode.SPACE);
    devices.sound(new float[4_800], 0, 4_800);
    window.settle();
    assertThat(room.guitar().next().get()).isEqualTo("String 6, fret 3 (G2)");
    window.press(KeyCode.BACK_SPACE);
    devices.sound(new float[4_800], 0, 4_800);
    window.settle();
    assertThat(room.guitar().next().get()).isEqualTo("String 6, open (E2)");
    window.press(KeyCode.ESCAPE);
    window.settle();
    assertThat(room.guitar().stage().get()).isEqualTo(Stage.REST);
  }

  @Test
  void pluckingBeginsWithTheFocusOnNothingThatTakesAnythingBack() {
    tabTo(Texts.of("guitar.begin"));
    window.press(KeyCode.SPACE);
    window.settle();
    assertThat(focus()).isNotInstanceOf(ButtonBase.class);
    assertThat(focus().getAccessibleText()).isEqualTo("String 6, open (E2)");
    FxWindow.on(
        () -> {
          room.guitar().skip();
          return null;
        });
    devices.sound(new float[4_800], 0, 4_800);
    window.settle();
    window.press(KeyCode.SPACE);
    window.press(KeyCode.ENTER);
    devices.sound(new float[4_800], 0, 4_800);
    window.settle();
    assertThat(room.guitar().next().get())
        .as("nothing was taken back")
        .startsWith("String 6, fret 3");
  }

  @Test
  void whatCannotBeLearntDoesNotPutTheFocusOnThrowingItAway() {
    FxWindow.on(
        () -> {
          room.guitar().begin();
          for (int place = 0; place < 24; place++) {
            room.guitar().skip();
          }
          return null;
        });
    devices.sound(new float[4_800], 0, 4_800);
    window.settle();
    assertThat(room.guitar().stage().get()).isEqualTo(Stage.REFUSED);
    assertThat(focus()).isNotInstanceOf(ButtonBase.class);
  }

  /** Where everything that can be clicked stands, by its words. */
  private Map<String, Double> tops() {
    return FxWindow.on(
        () -> {
          Map<String, Double> tops = new TreeMap<>();
          for (Node node : window.scene().getRoot().lookupAll("*")) {
            if (node instanceof Control
                && !(node instanceof Label)
                && node.isFocusTraversable()
                && shown(node)) {
              String name = node instanceof Button b ? b.getText() : node.getAccessibleText();
              tops.put(String.valueOf(name), node.localToScene(node.getLayoutBounds()).getMinY());
            }
          }
          return tops;
        });
  }

  @Test
  void nothingMovesWhenAStringSoundsIsTooQuietClipsOrIsWrong() {
    FxWindow.on(
        () -> {
          room.guitar().begin();
          return null;
        });
    for (int percent : new int[] {100, 150, 200, 300}) {
      FxWindow.on(
          () -> {
            desk.look().text(percent);
            return null;
          });
      devices.tone(196, 0, 7);
      window.settle();
      Map<String, Double> before = tops();
      assertThat(before).hasSizeGreaterThan(8);
      Set<String> said = new HashSet<>();
      for (double amplitude : new double[] {0.005, 0.3, 1.5, 0}) {
        devices.tone(110 * Math.pow(2, -0.4 / 12), amplitude, 2);
        window.settle();
        said.add(room.line().get());
        assertThat(tops()).as(percent + " %: " + room.line().get()).isEqualTo(before);
      }
      FxWindow.on(
          () -> {
            room.guitar().skip();
            return null;
          });
      devices.tone(0, 0, 0.1);
      window.settle();
      assertThat(tops()).as(percent + " %: next").isEqualTo(before);
      assertThat(said).hasSizeGreaterThan(2);
    }
  }

  @Test
  void levelAndTunerStandFirst() {
    FxWindow.on(
        () -> {
          Node needle = window.scene().getRoot().lookup(".needle");
          Node box = window.scene().getRoot().lookup(".page .combo-box");
          assertThat(top(needle)).isLessThan(top(box));
          assertThat(window.scene().getRoot().lookupAll(".scale-name")).hasSize(6);
          return null;
        });
  }

  private static double top(Node node) {
    return node.localToScene(node.getLayoutBounds()).getMinY();
  }

  @Test
  void deviceThatIsTakenByItselfIsNamedInTheBox() {
    devices.inputs.add(0, "default [default]");
    FxWindow.on(
        () -> {
          room.refresh();
          return null;
        });
    window.settle();
    FxWindow.on(
        () -> {
          ComboBox<?> box = (ComboBox<?>) window.scene().getFocusOwner();
          assertThat(box.getButtonCell().getText()).isEqualTo("Automatic: as set in the system");
          return null;
        });
  }

  /** Gives the window another size and text of 300 %. */
  private void largestTextInASmallWindow() {
    FxWindow.on(
        () -> {
          desk.look().text(300);
          Window stage = window.scene().getWindow();
          stage.setWidth(800 + stage.getWidth() - window.scene().getWidth());
          stage.setHeight(560 + stage.getHeight() - window.scene().getHeight());
          return null;
        });
    window.settle();
    assertThat(window.scene().getWidth()).isEqualTo(800);
  }

  private void nothingIsCutOnTheRight() {
    FxWindow.on(
        () -> {
          Node viewport = window.scene().getRoot().lookup(".scroll > .viewport");
          int seen = 0;
          for (Node node : viewport.lookupAll("*")) {
            if (node instanceof Control && shown(node)) {
              seen++;
              assertThat(right(node))
                  .as(node.toString())
                  .isLessThanOrEqualTo(right(viewport) + 0.5);
            }
          }
          assertThat(seen).isGreaterThan(15);
          return null;
        });
  }

  private static double right(Node node) {
    return node.localToScene(node.getLayoutBounds()).getMaxX();
  }

  private static boolean shown(Node node) {
    return node == null || node.isVisible() && shown(node.getParent());
  }

  @Test
  void nothingIsCutWithTheLargestTextInASmallWindow() {
    largestTextInASmallWindow();
    nothingIsCutOnTheRight();
  }

  @Test
  void pluckThatIsNextStaysInSightWithTheLargestTextInASmallWindow() {
    largestTextInASmallWindow();
    FxWindow.on(
        () -> {
          room.guitar().begin();
          return null;
        });
    devices.sound(new float[4_800], 0, 4_800);
    window.settle();
    nothingIsCutOnTheRight();
    FxWindow.on(
        () -> {
          Node viewport = window.scene().getRoot().lookup(".scroll > .viewport");
          Bounds seen = viewport.localToScene(viewport.getLayoutBounds());
          Node next = window.scene().getRoot().lookup(".room-next");
          Bounds name = next.localToScene(next.getLayoutBounds());
          assertThat(name.getMinY()).isGreaterThanOrEqualTo(seen.getMinY() - 0.5);
          assertThat(name.getMaxY()).isLessThanOrEqualTo(seen.getMaxY() + 0.5);
          return null;
        });
  }

  @Test
  void everythingThatTakesTheFocusHasAName() {
    Set<Node> seen = new HashSet<>();
    for (Node at = focus(); seen.add(at); at = focus()) {
      String name =
          at instanceof Button button && button.getAccessibleText() == null
              ? button.getText()
              : at.getAccessibleText();
      if (!at.getStyleClass().contains("tab")) {
        assertThat(name).as(at.toString()).isNotBlank();
      }
      window.press(KeyCode.TAB);
      window.settle();
    }
    assertThat(seen).hasSizeGreaterThan(7);
  }
}
