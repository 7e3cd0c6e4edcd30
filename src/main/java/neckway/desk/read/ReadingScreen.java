package neckway.desk.read;

import java.util.Locale;
import java.util.Optional;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.ComboBoxBase;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import neckway.desk.LookModel;
import neckway.desk.OneKey;
import neckway.desk.Screen;
import neckway.desk.Texts;
import neckway.desk.VolumeModel;
import neckway.desk.page.Arrangement;
import neckway.desk.page.PageView;
import neckway.desk.read.ReadingModel.Hearing;
import neckway.page.PageModel;

/** Shows a take that is over: sentences, page, the shift in close-up, and what can be heard. */
public final class ReadingScreen implements Screen {
  private static final double SENTENCES_SHARE = 0.30;
  private static final double LEAST_PAGE_HEIGHT = 280;

  private final ReadingModel model;
  private final RecordingModel recording;
  private final ReadingActions actions;
  private final LookModel look;
  private final BorderPane root = new BorderPane();
  private final VBox sentences = new VBox();
  private final CloseUpView closeUp = new CloseUpView();
  private final VBox left = new VBox();
  private final RoundsRow rounds;
  private final AgainLine again;
  private final SoundLine sound;
  private final Region foot;
  private boolean stacked;
  private Optional<PageView> page = Optional.empty();

  public ReadingScreen(
      ReadingModel model,
      RecordingModel recording,
      ReadingActions actions,
      LookModel look,
      VolumeModel volume) {
    this.model = model;
    this.recording = recording;
    this.actions = actions;
    this.look = look;
    sound = new SoundLine(model, volume, closeUp);
    root.getStyleClass().addAll("page", "reading");
    root.getStylesheets().add(Screen.class.getResource("run.css").toExternalForm());
    root.setFocusTraversable(true);
    root.setAccessibleRole(AccessibleRole.PARENT);
    sentences.getStyleClass().add("sentences");
    model.take().addListener(o -> fill());
    model.sentences().addListener(o -> words());
    model.closeUp().addListener(o -> near());
    model.waveform().addListener(o -> near());
    model.sight().addListener((o, old, now) -> page.ifPresent(p -> p.lookAt(now.step())));
    look.dark().addListener(o -> dress());
    look.fontPercent().addListener(o -> dress());
    look.crowdingPercent().addListener(o -> dress());
    look.leftHanded().addListener(o -> dress());
    look.lowStringOnTop().addListener(o -> dress());
    again = new AgainLine(model, recording);
    again.node().lookupAll(".combo-box").stream()
        .map(node -> (ComboBox<?>) node)
        .forEach(box -> OneKey.before(box, this::takesKey));
    rounds = new RoundsRow(model);
    foot = bottom();
    root.setBottom(foot);
    fill();
    dress();
  }

  private void dress() {
    double scale = look.fontPercent().get() / 100.0;
    if (stacked != Arrangement.stacked(look)) {
      stacked = !stacked;
      page.ifPresent(p -> root.setCenter(arranged(p)));
    }
    page.ifPresent(p -> p.look(look.dark().get(), 0.8 * scale));
    closeUp.look(look.dark().get(), scale);
    closeUp.turn(look.leftHanded().get(), look.lowStringOnTop().get());
  }

  /** Everything for a take, or the words that there is none. */
  private void fill() {
    if (model.take().get().isEmpty()) {
      Label nothing = new Label(Texts.of("read.nothing"));
      nothing.getStyleClass().add("nothing");
      nothing.setWrapText(true);
      root.setCenter(new StackPane(nothing));
      return;
    }
    PageModel shown = model.page().get();
    if (page.isEmpty()) {
      PageView view = new PageView(shown);
      view.setAccessibleText(Texts.of("read.page"));
      view.getStyleClass().add("read-page");
      view.onStep(model::hearFrom);
      page = Optional.of(view);
      root.setCenter(middle(view));
      dress();
    }
    page.get().show(shown);
    page.get().lookAt(model.sight().get().step());
    words();
    near();
  }

  private Region middle(PageView view) {
    Label figures = new Label();
    figures.getStyleClass().add("figures");
    figures.setWrapText(true);
    figures.setMinHeight(Region.USE_PREF_SIZE);
    figures.textProperty().bind(model.figures());
    Label pointed = new Label();
    pointed.getStyleClass().add("pointed");
    pointed.setWrapText(true);
    pointed.setAccessibleRole(AccessibleRole.TEXT);
    pointed
        .textProperty()
        .bind(
            Bindings.when(model.pointed().isEmpty())
                .then(Texts.of("read.keys"))
                .otherwise(model.pointed()));
    Label shift = new Label();
    shift.getStyleClass().add("shift");
    shift.setWrapText(true);
    shift.setMinHeight(Region.USE_PREF_SIZE);
    shift
        .textProperty()
        .bind(
            Bindings.createStringBinding(
                () -> model.closeUp().get().map(ReadingWords::shift).orElse(""), model.closeUp()));
    left.getChildren()
        .setAll(rounds.node(), figures, view, pointedAndPages(pointed, view), shift, closeUp);
    left.getStyleClass().add("column");
    return arranged(view);
  }

  /** The note that is pointed at, and which of several pages is in sight. */
  private static Region pointedAndPages(Label pointed, PageView view) {
    Label number = new Label();
    number.getStyleClass().add("page-number");
    number.setMinWidth(Region.USE_PREF_SIZE);
    number
        .textProperty()
        .bind(
            Bindings.createStringBinding(
                () -> Texts.of("page.number", view.sheetNumber().get(), view.sheets().get()),
                view.sheetNumber(),
                view.sheets()));
    HBox pages =
        new HBox(
            turning("\u2039", "page.before", view, -1),
            number,
            turning("\u203a", "page.after", view, 1));
    pages.getStyleClass().add("pages");
    pages.setMinWidth(Region.USE_PREF_SIZE);
    pages.managedProperty().bind(view.sheets().greaterThan(1));
    pages.visibleProperty().bind(view.sheets().greaterThan(1));
    pointed.setMaxWidth(Double.MAX_VALUE);
    pointed.setMinHeight(Region.USE_PREF_SIZE);
    HBox.setHgrow(pointed, Priority.ALWAYS);
    return new HBox(pointed, pages);
  }

  private static Button turning(String sign, String name, PageView view, int by) {
    Button button = new Button(sign);
    button.getStyleClass().add("keyed");
    button.setMinWidth(Region.USE_PREF_SIZE);
    button.setAccessibleText(Texts.of(name));
    button.setOnAction(e -> view.turn(by));
    return button;
  }

  /** Sentences beside the page, or with large text above it, in one column that is scrolled. */
  private Region arranged(PageView view) {
    view.minHeightProperty().unbind();
    if (stacked) {
      root.setBottom(null);
      VBox column = new VBox(sentences, left, foot);
      view.minHeightProperty().bind(root.heightProperty().multiply(0.5));
      return scroll(column);
    }
    root.setBottom(foot);
    view.setMinHeight(LEAST_PAGE_HEIGHT);
    VBox.setVgrow(view, Priority.ALWAYS);
    ScrollPane words = scroll(sentences);
    words.setAccessibleText(Texts.of("read.words"));
    words.prefWidthProperty().bind(root.widthProperty().multiply(SENTENCES_SHARE));
    words.setMinWidth(240);
    ScrollPane page = scroll(left);
    page.setFitToHeight(true);
    page.setFocusTraversable(false);
    HBox.setHgrow(page, Priority.ALWAYS);
    HBox middle = new HBox(words, page);
    middle.getStyleClass().add("beside");
    return middle;
  }

  private static ScrollPane scroll(Region content) {
    ScrollPane scroll = new ScrollPane(content);
    scroll.setFitToWidth(true);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    scroll.getStyleClass().add("words");
    return scroll;
  }

  private void words() {
    sentences.getChildren().clear();
    for (String sentence : model.sentences().get()) {
      Labeled label = model.named(sentence).isEmpty() ? new Label(sentence) : leading(sentence);
      label.setWrapText(true);
      label.getStyleClass().add("sentence");
      sentences.getChildren().add(label);
    }
    sentences.getChildren().add(legend());
  }

  /** A sentence that leads to the notes that it names. */
  private Button leading(String sentence) {
    Button button = new Button(sentence);
    button.getStyleClass().setAll("leading");
    button.setMaxWidth(Double.MAX_VALUE);
    button.setOnAction(e -> model.goTo(sentence));
    return button;
  }

  /** What the signs on the page mean, where it takes no room from the page. */
  private Label legend() {
    Label legend = new Label(model.legend().get());
    legend.setWrapText(true);
    legend.getStyleClass().add("legend");
    return legend;
  }

  private void near() {
    int strings = model.page().get() == null ? 0 : model.page().get().strings();
    closeUp.show(model.closeUp().get(), model.waveform().get(), strings);
    boolean there = model.closeUp().get().isPresent();
    closeUp.setManaged(there);
    closeUp.setVisible(there);
    int from = model.closeUp().get().map(CloseUp::firstStep).orElse(0);
    int to = model.closeUp().get().map(c -> c.lastStep() + 1).orElse(0);
    page.ifPresent(p -> p.mark(from, to));
  }

  private Region bottom() {
    FlowPane keys = new FlowPane();
    keys.getStyleClass().add("keys");
    keys.managedProperty().bind(there());
    keys.visibleProperty().bind(there());
    keys.getChildren()
        .addAll(
            button("read.again", "Space", actions::again),
            button("read.slower", "S", actions::slower),
            button("read.faster", "F", actions::faster),
            button("read.anotherJoin", "J", actions::anotherJoin),
            sound.lit(button("read.hear", "H", model::hear), Hearing.TAKE),
            sound.lit(button("read.loop", "L", model::loopShift), Hearing.SHIFT),
            sound.lit(button("read.model", "K", model::hearModel), Hearing.MODEL),
            speed(),
            button("read.nextShift", "N", model::nextShift),
            roundBefore());
    Label line = new Label();
    line.getStyleClass().add("off");
    line.setWrapText(true);
    line.textProperty().bind(model.line());
    line.managedProperty().bind(model.line().isNotEmpty());
    return new VBox(line, progress(), again.node(), sound.node(), keys);
  }

  private BooleanBinding there() {
    return Bindings.createBooleanBinding(() -> model.take().get().isPresent(), model.take());
  }

  private Node progress() {
    Label name = new Label();
    name.textProperty()
        .bind(
            Bindings.createStringBinding(
                () -> Texts.of("read.reviewing", recording.name().get()), recording.name()));
    ProgressBar bar = new ProgressBar();
    // a length that the file does not tell leaves it at 0: then the bar only says that it goes on
    bar.progressProperty()
        .bind(
            Bindings.when(recording.progress().greaterThan(0))
                .then(recording.progress())
                .otherwise(ProgressBar.INDETERMINATE_PROGRESS));
    bar.setMaxWidth(Double.MAX_VALUE);
    bar.accessibleTextProperty().bind(name.textProperty());
    HBox.setHgrow(bar, Priority.ALWAYS);
    Button cancel = new Button(Texts.of("read.cancel"));
    cancel.setOnAction(e -> recording.cancel());
    HBox box = new HBox(name, bar, cancel);
    box.getStyleClass().add("meter");
    box.managedProperty().bind(recording.running());
    box.visibleProperty().bind(recording.running());
    return box;
  }

  private Button button(String key, String letter, Runnable action) {
    Button button = new Button(Texts.of("read.key", Texts.of(key), letter));
    button.getStyleClass().add("keyed");
    button.setOnAction(e -> action.run());
    return button;
  }

  private Button roundBefore() {
    Button button = button("read.roundBefore", "R", model::roundBefore);
    button.managedProperty().bind(rounds.node().managedProperty());
    button.visibleProperty().bind(rounds.node().managedProperty());
    return button;
  }

  private Button speed() {
    Button button = button("read.speed", "V", model::nextSpeed);
    button
        .textProperty()
        .bind(
            Bindings.createStringBinding(
                () ->
                    Texts.of(
                        "read.key",
                        Texts.of(
                            "read.speed." + model.speed().get().name().toLowerCase(Locale.ROOT)),
                        "V"),
                model.speed()));
    return button;
  }

  @Override
  public boolean takesKey(KeyEvent event) {
    if (event.isShortcutDown() || event.isAltDown()) {
      return false;
    }
    Node focus = root.getScene() == null ? null : root.getScene().getFocusOwner();
    KeyCode code = event.getCode();
    if (OneKey.presses(event, focus)) {
      return true;
    }
    if (OneKey.is(event, focus)) {
      OneKey.close(focus);
      actions.again();
      return true;
    }
    if (sound.holds(focus) && code.isArrowKey()) {
      return false;
    }
    if (again.holds(focus) && code == KeyCode.ESCAPE && !OneKey.isOpen(focus)) {
      root.requestFocus();
      stop();
      return true;
    }
    return !OneKey.takesText(focus) && !OneKey.isOpen(focus) && isOfTheView(code, focus);
  }

  private boolean isOfTheView(KeyCode code, Node focus) {
    // a pane that was only clicked keeps no arrows from the notes
    boolean movesInFocus =
        focus instanceof ComboBoxBase<?> || focus instanceof ScrollPane && focus.isFocusVisible();
    if (movesInFocus && (code.isArrowKey() || code == KeyCode.HOME || code == KeyCode.END)) {
      return false;
    }
    int line = page.map(PageView::stepsPerLine).orElse(1);
    switch (code) {
      case S -> actions.slower();
      case F -> actions.faster();
      case R -> model.roundBefore();
      case J -> actions.anotherJoin();
      case H -> model.hear();
      case L -> model.loopShift();
      case K -> model.hearModel();
      case V -> model.nextSpeed();
      case N, PAGE_UP -> model.nextShift();
      case LEFT -> model.pointBy(-1);
      case RIGHT -> model.pointBy(1);
      case UP -> model.pointBy(-line);
      case DOWN -> model.pointBy(line);
      case HOME -> model.point(0);
      case END -> model.point(Integer.MAX_VALUE);
      case ESCAPE -> stop();
      default -> {
        return false;
      }
    }
    return true;
  }

  private void stop() {
    model.stop();
    recording.cancel();
  }

  @Override
  public Parent node() {
    return root;
  }

  @Override
  public void shown() {
    root.requestFocus();
  }

  @Override
  public void hidden() {
    model.stop();
  }
}
