package neckway.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.Labeled;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.StackPane;
import neckway.desk.Screen.Place;
import neckway.desk.page.Inks;
import neckway.file.SettingsFile;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The frame with two plain views in it. */
class DeskFrameTests {
  @TempDir private Path folder;
  private final List<String> happened = new ArrayList<>();
  private Desk desk;
  private DeskFrame frame;
  private FxWindow window;

  private final class Plain implements Screen {
    private final Place place;
    private final Button button;
    private final StackPane pane;

    Plain(Place place) {
      this.place = place;
      button = new Button(place.name());
      pane = new StackPane(button);
      happened.add("made " + place);
    }

    @Override
    public Parent node() {
      return pane;
    }

    @Override
    public void shown() {
      happened.add("shown " + place);
      button.requestFocus();
    }

    @Override
    public void hidden() {
      happened.add("hidden " + place);
    }
  }

  @BeforeEach
  void open() {
    window =
        FxWindow.open(
            () -> {
              desk = new Desk(SettingsFile.at(folder.resolve("settings.json")));
              Map<Place, Function<Desk, Screen>> screens = new EnumMap<>(Place.class);
              screens.put(Place.CHOOSING, d -> new Plain(Place.CHOOSING));
              screens.put(Place.READING, d -> new Plain(Place.READING));
              frame = new DeskFrame(desk, screens);
              return frame.scene(1280, 800);
            });
  }

  @AfterEach
  void close() {
    window.close();
  }

  @Test
  void viewsAreMadeWhenFirstShownAndToldWhenTheyComeAndGo() {
    window.press(KeyCode.CONTROL, KeyCode.DIGIT3);
    window.press(KeyCode.CONTROL, KeyCode.DIGIT1);
    assertThat(happened)
        .containsExactly(
            "made CHOOSING",
            "shown CHOOSING",
            "hidden CHOOSING",
            "made READING",
            "shown READING",
            "hidden READING",
            "shown CHOOSING");
    FxWindow.on(
        () -> {
          frame.close();
          return null;
        });
    assertThat(happened).endsWith("hidden CHOOSING");
  }

  @Test
  void goingToAnotherViewKeepsWhatWasChosen() {
    FxWindow.on(() -> desk.drill().tempo(111));
    assertThat(Files.exists(folder.resolve("settings.json"))).isFalse();
    window.press(KeyCode.CONTROL, KeyCode.DIGIT3);
    SettingsFile kept = SettingsFile.at(folder.resolve("settings.json"));
    assertThat(kept.drill("drill").orElseThrow().pulse().tempo()).isEqualTo(111);
  }

  @Test
  void theTabOfTheViewInFrontStaysPressed() {
    List<ToggleButton> tabs =
        FxWindow.on(
            () ->
                window.scene().getRoot().lookupAll(".tab").stream()
                    .map(ToggleButton.class::cast)
                    .toList());
    assertThat(tabs).extracting(Labeled::getText).containsExactlyInAnyOrder("Choose", "Read");
    FxWindow.on(
        () -> {
          tabs.stream().filter(ToggleButton::isSelected).findFirst().get().fire();
          return null;
        });
    assertThat(tabs.stream().filter(ToggleButton::isSelected).map(Labeled::getText))
        .containsExactly("Choose");
  }

  /** Plus is Shift and = on keyboards of the US layout, + alone on German ones. */
  @Test
  void ctrlAndPlusEnlargesHoweverPlusIsTyped() {
    window.press(KeyCode.CONTROL, KeyCode.EQUALS);
    assertThat(desk.look().textPercent().get()).isEqualTo(125);
    window.press(KeyCode.CONTROL, KeyCode.SHIFT, KeyCode.EQUALS);
    assertThat(desk.look().textPercent().get()).isEqualTo(150);
    window.press(KeyCode.CONTROL, KeyCode.PLUS);
    assertThat(desk.look().textPercent().get()).isEqualTo(175);
    window.press(KeyCode.CONTROL, KeyCode.MINUS);
    assertThat(desk.look().textPercent().get()).isEqualTo(150);
  }

  @Test
  void aLineForThePlayerTakesRoomOnlyWhileItIsThere() {
    Node notice = FxWindow.on(() -> window.scene().getRoot().lookup(".notice"));
    assertThat(notice.isVisible()).isFalse();
    FxWindow.on(
        () -> {
          desk.say("something is off");
          return null;
        });
    assertThat(notice.isVisible()).isTrue();
    window.press(KeyCode.CONTROL, KeyCode.DIGIT3);
    assertThat(notice.isVisible()).isFalse();
  }

  /** What is seen before anything is painted is no white flash. */
  @Test
  void windowIsOfThePagesPaperBeforeItIsPainted() {
    assertThat(DeskFrame.PAPER).isEqualTo(Inks.of(false).paper());
    assertThat(DeskFrame.DARK_PAPER).isEqualTo(Inks.of(true).paper());
    assertThat(window.scene().getFill()).isEqualTo(DeskFrame.PAPER);
    FxWindow.on(
        () -> {
          desk.look().dark().set(true);
          return null;
        });
    assertThat(window.scene().getFill()).isEqualTo(DeskFrame.DARK_PAPER);
  }

  /** The button names the language that it chooses, and says in it when it comes. */
  @Test
  void choosesALanguageForTheNextStart() {
    assertThat(press("Deutsch")).isEqualTo("Ab dem nächsten Start ist das Fenster deutsch.");
    assertThat(SettingsFile.at(desk.settings().path()).text("language")).contains("de");
    assertThat(press("English")).isEqualTo("The window is in English from the next start on.");
    assertThat(SettingsFile.at(desk.settings().path()).text("language")).contains("en");
  }

  private String press(String words) {
    return FxWindow.on(
        () -> {
          window.scene().getRoot().lookupAll(".quiet").stream()
              .map(Button.class::cast)
              .filter(button -> button.getText().equals(words))
              .findAny()
              .orElseThrow()
              .fire();
          return desk.notice().get();
        });
  }
}
