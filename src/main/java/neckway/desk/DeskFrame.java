package neckway.desk;

import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.Toggle;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.scene.paint.Color;
import neckway.desk.Screen.Place;

/**
 * What stands around every view: their names at the top, text size and light or dark beside them,
 * and one line for the player at the foot.
 */
public final class DeskFrame {
  /** Size of plain text at 100 %, pixels. */
  public static final double BASE_PIXELS = 15.5;

  /** What a window shows before anything is painted: the style sheet's paper, light and dark. */
  static final Color PAPER = Color.web("#fbfaf6");

  static final Color DARK_PAPER = Color.web("#1b1c1e");

  private static final int LARGE_PERCENT = 150;
  private static final int HUGE_PERCENT = 225;

  private final Desk desk;
  private final Map<Place, Function<Desk, Screen>> makers;
  private final Map<Place, Screen> made = new EnumMap<>(Place.class);
  private final Map<Place, ToggleButton> tabs = new EnumMap<>(Place.class);
  private final BorderPane root = new BorderPane();
  private final Optional<Strip> strip;

  /** What is asked before the first view comes to the front; empty once it is over. */
  private Optional<Screen> before = Optional.empty();

  /**
   * @param makers the views that there are; each is made when it is first shown
   */
  public DeskFrame(Desk desk, Map<Place, Function<Desk, Screen>> makers) {
    this(desk, makers, Optional.empty());
  }

  /**
   * The same with a strip above some of the views.
   *
   * @param strip asked before each view comes to the front
   */
  public DeskFrame(Desk desk, Map<Place, Function<Desk, Screen>> makers, Optional<Strip> strip) {
    this.desk = desk;
    this.strip = strip;
    this.makers = new EnumMap<>(makers);
    desk.router().offer(makers.keySet());
    Type.ready();
    root.getStyleClass().add("desk");
    root.getStylesheets().add(DeskFrame.class.getResource("desk.css").toExternalForm());
    root.setTop(new VBox(top()));
    root.setBottom(foot());
    desk.look().fontPercent().addListener(o -> dress());
    desk.look().textPercent().addListener(o -> dress());
    desk.look().dark().addListener(o -> dress());
    dress();
    Drops.accept(root, desk);
    desk.router().current().addListener((o, before, now) -> show(before, now));
  }

  /** Shows something in place of the first view, until another view is gone to. */
  public void before(Screen asked) {
    before = Optional.of(asked);
  }

  /** What stood in place of the first view is over: that comes to the front. */
  public void begin() {
    Place now = desk.router().current().get();
    show(now, now);
  }

  /** A scene with this frame, its keys at work and its first view in front. */
  public Scene scene(double width, double height) {
    Scene scene = new Scene(root, width, height);
    keys(scene);
    scene.addEventFilter(KeyEvent.KEY_PRESSED, this::toTheFront);
    desk.look().window(width, height);
    scene.widthProperty().addListener(o -> measured(scene));
    scene.heightProperty().addListener(o -> measured(scene));
    if (before.isPresent()) {
      root.setCenter(before.get().node());
      before.get().shown();
    } else {
      begin();
    }
    desk.look().dark().addListener(o -> fill(scene));
    fill(scene);
    return scene;
  }

  private void fill(Scene scene) {
    scene.setFill(desk.look().dark().get() ? DARK_PAPER : PAPER);
  }

  /** Styles and lays out everything, so that no more than painting is left once it is shown. */
  public void prepare() {
    root.applyCss();
    root.layout();
  }

  private void toTheFront(KeyEvent event) {
    Screen front = before.orElse(made.get(desk.router().current().get()));
    Node focus = root.getScene().getFocusOwner();
    boolean taken = before.isEmpty() && strip.filter(s -> s.takesKey(event, focus)).isPresent();
    if (taken || front != null && front.takesKey(event)) {
      event.consume();
    }
  }

  private void measured(Scene scene) {
    desk.look().window(scene.getWidth(), scene.getHeight());
  }

  /** Tells the view in front that the window closes. */
  public void close() {
    Screen front = before.orElse(made.get(desk.router().current().get()));
    if (front != null) {
      front.hidden();
    }
  }

  private void show(Place before, Place now) {
    this.before.ifPresent(Screen::hidden);
    this.before = Optional.empty();
    Screen old = made.get(before);
    if (old != null && before != now) {
      old.hidden();
    }
    desk.say(before == now ? desk.notice().get() : "");
    Screen screen = made.computeIfAbsent(now, place -> makers.get(place).apply(desk));
    root.setCenter(screen.node());
    strip.ifPresent(above -> stand(above, now));
    tabs.get(now).setSelected(true);
    if (before != now) {
      desk.keep();
    }
    screen.shown();
  }

  private void stand(Strip above, Place now) {
    VBox top = (VBox) root.getTop();
    top.getChildren().remove(above.node());
    if (above.isFor(now)) {
      top.getChildren().add(above.node());
    }
  }

  private Region top() {
    HBox bar = new HBox();
    bar.getStyleClass().add("tabs");
    ToggleGroup group = new ToggleGroup();
    for (Place place : makers.keySet()) {
      ToggleButton tab = new ToggleButton(Texts.of(place.textKey()));
      tab.getStyleClass().setAll("tab");
      tab.setMinWidth(Region.USE_PREF_SIZE);
      tab.setAccessibleRole(AccessibleRole.TAB_ITEM);
      tab.setTooltip(new Tooltip(Texts.of("place.key", place.ordinal() + 1)));
      tab.setToggleGroup(group);
      tab.setOnAction(e -> go(place));
      tabs.put(place, tab);
      bar.getChildren().add(tab);
    }
    group.selectedToggleProperty().addListener((o, before, now) -> keepOne(before, now));
    HBox look =
        new HBox(
            quiet("look.smaller", () -> desk.look().smallerText()),
            quiet("look.larger", () -> desk.look().largerText()),
            quiet("look.dark", () -> desk.look().dark().set(!desk.look().dark().get())),
            new LanguageButton(desk));
    SideBySide top = new SideBySide(bar, look);
    top.getStyleClass().add("top");
    return top;
  }

  private void go(Place place) {
    if (before.isPresent() && desk.router().current().get() == place) {
      begin();
    } else {
      desk.router().go(place);
    }
  }

  private static void keepOne(Toggle before, Toggle now) {
    if (now == null && before != null) {
      before.setSelected(true);
    }
  }

  private static Button quiet(String key, Runnable action) {
    Button button = new Button(Texts.of(key));
    button.getStyleClass().setAll("quiet");
    button.setMinWidth(Region.USE_PREF_SIZE);
    button.setAccessibleText(Texts.of(key + ".long"));
    button.setTooltip(new Tooltip(Texts.of(key + ".long")));
    button.setOnAction(e -> action.run());
    return button;
  }

  private Label foot() {
    Label notice = new Label();
    notice.getStyleClass().add("notice");
    notice.setWrapText(true);
    notice.setMaxWidth(Double.MAX_VALUE);
    notice.textProperty().bind(desk.notice());
    notice.managedProperty().bind(desk.notice().isNotEmpty());
    notice.visibleProperty().bind(desk.notice().isNotEmpty());
    notice.setAccessibleRole(AccessibleRole.TEXT);
    return notice;
  }

  private void dress() {
    double pixels = BASE_PIXELS * desk.look().fontPercent().get() / 100;
    root.setStyle(String.format(Locale.ROOT, "-fx-font-size: %.1fpx;", pixels));
    root.getStyleClass().removeAll("dark", "large", "huge");
    if (desk.look().textPercent().get() > HUGE_PERCENT) {
      root.getStyleClass().add("huge");
    } else if (desk.look().textPercent().get() > LARGE_PERCENT) {
      root.getStyleClass().add("large");
    }
    if (desk.look().dark().get()) {
      root.getStyleClass().add("dark");
    }
  }

  private void keys(Scene scene) {
    for (Place place : makers.keySet()) {
      KeyCode digit = KeyCode.getKeyCode(Integer.toString(place.ordinal() + 1));
      on(scene, digit, () -> go(place));
    }
    on(scene, KeyCode.PLUS, () -> desk.look().largerText());
    on(scene, KeyCode.EQUALS, () -> desk.look().largerText());
    // plus is Shift and = on many keyboards
    scene
        .getAccelerators()
        .put(
            new KeyCodeCombination(
                KeyCode.EQUALS, KeyCombination.SHORTCUT_DOWN, KeyCombination.SHIFT_DOWN),
            () -> desk.look().largerText());
    on(scene, KeyCode.ADD, () -> desk.look().largerText());
    on(scene, KeyCode.MINUS, () -> desk.look().smallerText());
    on(scene, KeyCode.SUBTRACT, () -> desk.look().smallerText());
    on(scene, KeyCode.D, () -> desk.look().dark().set(!desk.look().dark().get()));
  }

  private static void on(Scene scene, KeyCode code, Runnable action) {
    scene.getAccelerators().put(new KeyCodeCombination(code, KeyCombination.SHORTCUT_DOWN), action);
  }
}
