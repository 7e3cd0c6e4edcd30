package neckway.desk.choose;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.Spinner;
import javafx.scene.control.ToggleButton;
import neckway.desk.Desk;
import neckway.desk.DeskFrame;
import neckway.desk.FxWindow;
import neckway.desk.Screen;
import neckway.desk.Screen.Place;
import neckway.drill.Pulse;
import neckway.file.SettingsFile;
import neckway.neck.BadInput;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Notes a beat, swing and start of a drill, as they are chosen in the form. */
class FeelRowsTests {
  @TempDir private Path folder;
  private Desk desk;
  private FxWindow window;

  @BeforeEach
  void open() {
    window =
        FxWindow.open(
            () -> {
              desk = new Desk(SettingsFile.at(folder.resolve("settings.json")));
              Map<Place, Function<Desk, Screen>> screens = new EnumMap<>(Place.class);
              screens.put(
                  Place.CHOOSING,
                  d ->
                      new ChoosingScreen(
                          d,
                          (sound, rate) -> {
                            throw new BadInput("no device here");
                          }));
              return new DeskFrame(desk, screens).scene(1280, 800);
            });
  }

  @AfterEach
  void close() {
    window.close();
  }

  private List<Node> named(String name) {
    Parent root = window.scene().getRoot();
    return Stream.of(".combo-box", ".spinner")
        .flatMap(style -> root.lookupAll(style).stream())
        .filter(node -> name.equals(node.getAccessibleText()))
        .toList();
  }

  private void on(Runnable work) {
    FxWindow.on(
        () -> {
          work.run();
          return null;
        });
    window.settle();
  }

  private void unfold() {
    on(
        () ->
            window.scene().getRoot().lookupAll(".toggle-button").stream()
                .map(ToggleButton.class::cast)
                .filter(button -> button.getText().equals("More settings"))
                .forEach(ToggleButton::fire));
  }

  /** Picks what the list shows as these words. */
  private <T> void pick(String box, String words) {
    on(
        () -> {
          @SuppressWarnings("unchecked")
          ComboBox<T> of = (ComboBox<T>) named(box).get(0);
          of.setValue(
              of.getItems().stream()
                  .filter(item -> of.getConverter().toString(item).equals(words))
                  .findFirst()
                  .orElseThrow());
        });
  }

  private void step(String spinner, int by) {
    on(() -> ((Spinner<?>) named(spinner).get(0)).increment(by));
  }

  private Pulse pulse() {
    return desk.drill().drill().pulse();
  }

  @Test
  void foldedAwayWhileAllIsStraightAndOpenWhereItIsNot() {
    assertThat(FxWindow.on(() -> named("Swing"))).isEmpty();
    on(() -> desk.drill().offsetBeats(1));
    assertThat(FxWindow.on(() -> named("Swing"))).hasSize(1);
  }

  @Test
  void shuffleBeginsAsATripletAndItsRatioIsStepped() {
    unfold();
    assertThat(FxWindow.on(() -> named("Long note, %"))).isEmpty();
    pick("Swing", "shuffle");
    assertThat(pulse().swing()).isCloseTo(2.0 / 3, within(1e-9));
    step("Long note, %", 3);
    // from 66.7 as the field shows it
    assertThat(pulse().swing()).isCloseTo(0.697, within(1e-9));
    assertThat(details()).contains("swung 70 to 30");
    pick("Swing", "straight");
    assertThat(pulse().isPlain()).isTrue();
  }

  @Test
  void firstNoteComesAsManyNotesLaterAsItIsStepped() {
    unfold();
    step("Starts later, beats", 3);
    assertThat(pulse().offsetBeats()).isEqualTo(1.5);
    assertThat(details()).contains("from 1.50 beats");
    pick("Notes a beat", "three: triplets");
    assertThat(pulse().notesPerBeat()).isEqualTo(3);
    assertThat(pulse().offsetBeats()).as("there is no such triplet").isZero();
    step("Starts later, beats", 2);
    assertThat(pulse().offsetBeats()).isCloseTo(2.0 / 3, within(1e-9));
  }

  @Test
  void swingThatTheNotesCannotHaveIsOneLineAndTheListSaysWhatIs() {
    unfold();
    pick("Notes a beat", "one");
    pick("Swing", "shuffle");
    assertThat(pulse().isPlain()).isTrue();
    assertThat(desk.notice().get()).contains("one a beat cannot be paired");
    assertThat(FxWindow.on(() -> ((ComboBox<?>) named("Swing").get(0)).getValue()))
        .hasToString("STRAIGHT");
  }

  private String details() {
    return FxWindow.on(() -> ((Label) window.scene().getRoot().lookup(".details")).getText());
  }
}
