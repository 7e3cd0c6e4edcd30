package neckway.desk.choose;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Control;
import javafx.scene.control.Labeled;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Region;
import javafx.scene.text.Text;
import neckway.Await;
import neckway.desk.Desk;
import neckway.desk.DeskFrame;
import neckway.desk.FxWindow;
import neckway.desk.LookModel;
import neckway.desk.Screen;
import neckway.desk.Screen.Place;
import neckway.file.SettingsFile;
import neckway.neck.BadInput;
import neckway.neck.Direction;
import neckway.neck.Shape;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The choosing screen in a window, by keyboard alone. */
class ChoosingScreenTests {
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
              screens.put(Place.CHOOSING, d -> new ChoosingScreen(d, (sound, rate) -> noDevice()));
              return new DeskFrame(desk, screens).scene(1280, 800);
            });
  }

  private static HearModel.Playing noDevice() {
    throw new BadInput("no device here");
  }

  @AfterEach
  void close() {
    window.close();
  }

  private Node focus() {
    return FxWindow.on(() -> window.scene().getFocusOwner());
  }

  private void tabUntil(String styleClass) {
    for (int i = 0; i < 40 && !focus().getStyleClass().contains(styleClass); i++) {
      window.press(KeyCode.TAB);
    }
    assertThat(focus().getStyleClass()).contains(styleClass);
  }

  @Test
  void aDrillIsChosenByKeyboardAlone() {
    window.press(KeyCode.DOWN);
    window.press(KeyCode.DOWN);
    window.press(KeyCode.RIGHT);
    window.press(KeyCode.DOWN);
    assertThat(desk.drill().join(0, Direction.UP).string().number()).isEqualTo(5);
    assertThat(desk.drill().join(0, Direction.DOWN).string().number()).isEqualTo(4);
    tabUntil("neck");
    window.press(KeyCode.RIGHT);
    assertThat(desk.drill().drill().shapes()).containsExactly(Shape.DORIAN, Shape.PHRYGIAN);
    window.press(KeyCode.CONTROL, KeyCode.PLUS);
    assertThat(desk.look().textPercent().get()).isEqualTo(125);
    window.press(KeyCode.CONTROL, KeyCode.D);
    assertThat(desk.look().dark().get()).isTrue();
  }

  @Test
  void fewSettingsStandThereAndTheRestIsOneStepBehind() {
    assertThat(fields()).containsExactlyInAnyOrder("Key", "First note", "Shapes", "Tempo");
    unfold();
    assertThat(fields()).contains("Key", "Tuning", "Notes a beat", "Rounds", "On the dots");
    window.press(KeyCode.SPACE);
    assertThat(fields()).hasSize(4);
  }

  private List<String> fields() {
    return FxWindow.on(
        () ->
            FxWindow.all(window.scene().getRoot(), ".combo-box-base", ".spinner").stream()
                .map(Node::getAccessibleText)
                .toList());
  }

  @Test
  void theTempoIsTypedOrStepped() {
    tabUntil("number");
    for (int i = 0; i < 20 && !"Tempo".equals(focus().getAccessibleText()); i++) {
      window.press(KeyCode.TAB);
    }
    assertThat(focus().getAccessibleText()).isEqualTo("Tempo");
    window.press(KeyCode.UP);
    assertThat(desk.drill().drill().pulse().tempo()).isEqualTo(82);
    type(KeyCode.DIGIT9, KeyCode.DIGIT5, KeyCode.PERIOD, KeyCode.DIGIT5);
    assertThat(desk.drill().drill().pulse().tempo()).isEqualTo(95.5);
    type(KeyCode.DIGIT5, KeyCode.DIGIT0, KeyCode.DIGIT0);
    assertThat(desk.drill().drill().pulse().tempo()).isEqualTo(95.5);
    assertThat(desk.notice().get()).isEqualTo("tempo 500: give a number from 20 to 400");
    type(KeyCode.A);
    assertThat(desk.notice().get()).startsWith("tempo a: give a number");
    type(KeyCode.DIGIT8, KeyCode.DIGIT8);
    assertThat(desk.drill().drill().pulse().tempo()).isEqualTo(88);
    assertThat(desk.notice().get()).isEmpty();
  }

  private void type(KeyCode... keys) {
    window.press(KeyCode.CONTROL, KeyCode.A);
    for (KeyCode key : keys) {
      window.press(key);
    }
    window.press(KeyCode.ENTER);
  }

  @Test
  void aTuningThatCannotBeReadStaysInTheFieldAndIsSaid() {
    unfold();
    for (int i = 0; i < 30 && !"Tuning".equals(focus().getAccessibleText()); i++) {
      window.press(KeyCode.TAB);
    }
    type(KeyCode.E, KeyCode.DIGIT2);
    assertThat(desk.notice().get()).contains("four to eight");
    ComboBox<?> field = (ComboBox<?>) focus();
    assertThat(FxWindow.on(() -> field.getEditor().getText())).isEqualToIgnoringCase("e2");
    assertThat(desk.drill().drill().tuning().count()).isEqualTo(6);
  }

  @Test
  void aTuningIsTypedByItsNameAndAKeyByItsShortOne() {
    unfold();
    goTo("Tuning");
    type(KeyCode.D, KeyCode.R, KeyCode.O, KeyCode.P, KeyCode.SPACE, KeyCode.D);
    assertThat(desk.drill().drill().tuning()).hasToString("D2 A2 D3 G3 B3 E4");
    ComboBox<?> field = (ComboBox<?>) focus();
    assertThat(FxWindow.on(() -> field.getEditor().getText())).isEqualTo("drop D");
    type(KeyCode.D, KeyCode.A, KeyCode.D, KeyCode.G, KeyCode.B, KeyCode.E);
    assertThat(FxWindow.on(() -> field.getEditor().getText())).isEqualTo("drop D");
    goTo("Key");
    typeCapital(KeyCode.A);
    assertThat(desk.drill().drill().key()).hasToString("A minor");
    type(KeyCode.H);
    assertThat(desk.drill().drill().key()).hasToString("A minor");
    assertThat(desk.notice().get()).contains("\"h\"");
  }

  /** Unfolds what is seldom changed, by keyboard. */
  private void unfold() {
    for (int i = 0; i < 60 && !isMore(focus()); i++) {
      window.press(KeyCode.TAB);
    }
    assertThat(isMore(focus())).isTrue();
    window.press(KeyCode.SPACE);
    window.settle();
  }

  private static boolean isMore(Node node) {
    return node instanceof ToggleButton button && button.getText().equals("More settings");
  }

  private void goTo(String name) {
    for (int i = 0; i < 60 && !name.equals(focus().getAccessibleText()); i++) {
      window.press(KeyCode.TAB);
    }
    assertThat(focus().getAccessibleText()).isEqualTo(name);
  }

  /** A capital letter, and m for minor. */
  private void typeCapital(KeyCode letter) {
    window.press(KeyCode.CONTROL, KeyCode.A);
    window.press(KeyCode.SHIFT, letter);
    window.press(KeyCode.M);
    window.press(KeyCode.ENTER);
  }

  @Test
  void hearingWithoutADeviceSaysSoAtTheFoot() throws Exception {
    window.press(KeyCode.CONTROL, KeyCode.H);
    Await.until("something is said", 30, () -> !FxWindow.on(() -> desk.notice().get()).isEmpty());
    assertThat(FxWindow.on(() -> desk.notice().get())).isEqualTo("no device here");
  }

  /**
   * All that takes the focus has words for a screen reader, and the focus goes all the way round.
   */
  @Test
  void tabReachesEveryControlAndEachHasAName() {
    unfold();
    Set<Node> met = new HashSet<>();
    Node first = focus();
    Node at = first;
    do {
      met.add(at);
      String name = at.getAccessibleText();
      boolean named = name != null && !name.isBlank();
      boolean words = at instanceof Labeled labeled && !labeled.getText().isBlank();
      assertThat(named || words).as(at.toString()).isTrue();
      window.press(KeyCode.TAB);
      at = focus();
    } while (at != first && met.size() < 60);
    assertThat(at).isSameAs(first);
    List<Node> traversable = new ArrayList<>();
    FxWindow.on(
        () -> {
          collect(window.scene().getRoot(), traversable);
          return null;
        });
    assertThat(met).containsAll(traversable);
  }

  private static void collect(Parent parent, List<Node> traversable) {
    for (Node child : parent.getChildrenUnmodifiable()) {
      if (child.isFocusTraversable() && child.isVisible() && child instanceof Control) {
        traversable.add(child);
      } else if (child instanceof Parent inner) {
        collect(inner, traversable);
      }
    }
  }

  @Test
  void nothingIsCutOffToTheRightUpTo300PerCent() {
    nothingIsCutOff();
    unfold();
    nothingIsCutOff();
  }

  private void nothingIsCutOff() {
    for (int percent : new int[] {100, 150, 200, 300}) {
      FxWindow.on(
          () -> {
            desk.look().text(percent);
            return null;
          });
      window.settle();
      FxWindow.on(
          () -> {
            for (Node node :
                FxWindow.all(window.scene().getRoot(), ".button", ".label", ".neck", ".number")) {
              if (node.isVisible() && node instanceof Region) {
                assertThat(node.localToScene(node.getLayoutBounds()).getMaxX())
                    .as(percent + " %: " + node)
                    .isLessThanOrEqualTo(1281);
                assertThat(shownText(node)).as(percent + " %: " + node).doesNotEndWith("...");
              }
            }
            return null;
          });
    }
  }

  @Test
  void whatHasTheFocusIsInSightInLargeText() {
    FxWindow.on(
        () -> {
          desk.look().text(300);
          return null;
        });
    window.settle();
    for (int i = 0; i < 6; i++) {
      window.press(KeyCode.DOWN);
      inSight();
    }
    unfold();
    for (int i = 0; i < 20; i++) {
      window.press(KeyCode.TAB);
      inSight();
    }
  }

  private void inSight() {
    window.settle();
    Node at = focus();
    Bounds bounds = FxWindow.on(() -> at.localToScene(at.getLayoutBounds()));
    assertThat(bounds.getMinY()).as(at.toString()).isBetween(0.0, 760.0);
    if (!at.getStyleClass().contains("neck")) {
      assertThat(bounds.getMaxY()).as(at.toString()).isBetween(0.0, 800.0);
    }
  }

  private static String shownText(Node node) {
    Node text = node.lookup(".text");
    return text instanceof Text shown ? shown.getText() : "";
  }

  @Test
  void whatIsSeenIsTheNeckInTwoHues() {
    BufferedImage light = window.picture();
    FxWindow.on(
        () -> {
          desk.look().dark().set(true);
          desk.look().label().set(LookModel.Label.NOTE);
          return null;
        });
    BufferedImage dark = window.picture();
    assertThat(brightness(light)).isGreaterThan(200);
    assertThat(brightness(dark)).isLessThan(80);
    for (BufferedImage image : List.of(light, dark)) {
      assertThat(count(image, true)).as("blue").isGreaterThan(2000);
      assertThat(count(image, false)).as("orange").isGreaterThan(2000);
    }
  }

  private static double brightness(BufferedImage image) {
    double sum = 0;
    for (int rgb : pixels(image)) {
      sum += (rgb >> 8) & 255;
    }
    return sum / (image.getWidth() * image.getHeight());
  }

  private static long count(BufferedImage image, boolean blue) {
    long count = 0;
    for (int rgb : pixels(image)) {
      int more = (rgb & 255) - ((rgb >> 16) & 255);
      count += (blue ? more : -more) > 15 ? 1 : 0;
    }
    return count;
  }

  private static int[] pixels(BufferedImage image) {
    return image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
  }

  @Test
  void everyStandCanBeClicked() {
    List<Node> marks =
        FxWindow.on(() -> new ArrayList<>(window.scene().getRoot().lookupAll(".hit")));
    marks.sort(Comparator.comparing(n -> n.getBoundsInParent().getMinX()));
    FxWindow.on(
        () -> {
          Node first = marks.get(0);
          var b = first.localToScene(first.getLayoutBounds());
          first.fireEvent(FxWindow.click(b.getCenterX(), b.getCenterY()));
          return null;
        });
    assertThat(desk.drill().drill().shapes().get(0)).isEqualTo(Shape.MINOR);
  }
}
