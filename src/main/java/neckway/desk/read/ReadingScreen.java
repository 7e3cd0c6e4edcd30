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
import neckway.desk.page.PageView;
import neckway.desk.read.ReadingModel.Hearing;
import neckway.page.PageModel;
import neckway.review.words.Sentence;

/**
 * Shows a take that is over: what to do next, the score, the page, the shift in close-up with what
 * can be heard, and the details.
 */
public final class ReadingScreen implements Screen {
  /** Of the window's width, what stands beside the page and the close-up. */
  private static final double BESIDE_SHARE = 0.37;

  /** Of the page's usual size: two lines of it fit at 1280 x 800. */
  private static final double PAGE_SCALE = 0.76;

  /** From this crowding on, per cent, all stands in one column. */
  private static final int STACKED_PERCENT = 115;

  /** Of the screen's height, the page in one column: two lines of it at 800 x 560. */
  private static final double PAGE_SHARE = 0.68;

  /** One line of the page at text of 100 %, pixels. */
  private static final double LEAST_PAGE_HEIGHT = 200;

  private final ReadingModel model;
  private final RecordingModel recording;
  private final ReadingActions actions;
  private final LookModel look;
  private final BorderPane root = new BorderPane();

  /** What to do next: the advice, and below it a line for each thing more. */
  private final VBox whatNext = new VBox();

  private final VBox advice = new VBox();
  private final VBox details = new VBox();
  private final CloseUpView closeUp = new CloseUpView();
  private final Label legend = new Label();
  private final RoundsRow rounds;
  private final AgainLine again;
  private final SoundLine sound;
  private final Region tools;
  private final VBox foot;
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
    advice.getStyleClass().add("advice");
    whatNext.getStyleClass().add("what-next");
    whatNext.getChildren().add(advice);
    details.getStyleClass().add("sentences");
    legend.getStyleClass().add("legend");
    legend.setWrapText(true);
    legend.setMinHeight(Region.USE_PREF_SIZE);
    legend.textProperty().bind(model.legend());
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
    rounds = new RoundsRow(model, button("read.roundBefore", "R", model::roundBefore));
    tools = tools();
    foot = foot();
    root.setBottom(foot);
    fill();
    dress();
  }

  private void dress() {
    double scale = scale();
    if (stacked != look.crowdingPercent().get() > STACKED_PERCENT) {
      stacked = !stacked;
      page.ifPresent(p -> root.setCenter(arranged(p)));
    } else if (!stacked) {
      page.ifPresent(p -> p.setMinHeight(LEAST_PAGE_HEIGHT * scale));
    }
    page.ifPresent(p -> p.look(look.dark().get(), PAGE_SCALE * scale));
    closeUp.look(look.dark().get(), scale);
    closeUp.turn(look.leftHanded().get(), look.lowStringOnTop().get());
  }

  private double scale() {
    return look.fontPercent().get() / 100.0;
  }

  /** Everything for a take, or the words that there is none. */
  private void fill() {
    if (model.take().get().isEmpty()) {
      Label nothing = new Label(Texts.of("read.nothing"));
      nothing.getStyleClass().add("nothing");
      nothing.setWrapText(true);
      nothing.setMinHeight(Region.USE_PREF_SIZE);
      Button begin = button("read.begin", Texts.of("key.space"), actions::again);
      begin.getStyleClass().add("main-action");
      VBox both = new VBox(nothing, begin);
      both.getStyleClass().add("nothing-yet");
      root.setCenter(new StackPane(both));
      return;
    }
    PageModel shown = model.page().get();
    if (page.isEmpty()) {
      PageView view = new PageView(shown);
      view.setAccessibleText(Texts.of("read.page"));
      view.getStyleClass().add("read-page");
      view.onStep(model::hearFrom);
      page = Optional.of(view);
      root.setCenter(arranged(view));
      dress();
    }
    page.get().show(shown);
    page.get().lookAt(model.sight().get().step());
    words();
    near();
  }

  /** The score once, and what was played when. */
  private Region head() {
    Label figures = wrapped("figures");
    figures.textProperty().bind(model.figures());
    Label played = wrapped("played");
    played.textProperty().bind(model.played());
    VBox head = new VBox(whatNext, figures, played, rounds.node());
    head.getStyleClass().add("read-head");
    head.setMinHeight(Region.USE_PREF_SIZE);
    return head;
  }

  private static Label wrapped(String style) {
    Label label = new Label();
    label.getStyleClass().add(style);
    label.setWrapText(true);
    label.setMinHeight(Region.USE_PREF_SIZE);
    return label;
  }

  private Region pointed(PageView view) {
    Label pointed = wrapped("pointed");
    pointed.setAccessibleRole(AccessibleRole.TEXT);
    pointed
        .textProperty()
        .bind(
            Bindings.when(model.pointed().isEmpty())
                .then(Texts.of("read.keys"))
                .otherwise(model.pointed()));
    return pointedAndPages(pointed, view);
  }

  /** The shift in close-up, in words and drawn. */
  private VBox shift() {
    Label shift = wrapped("shift");
    shift
        .textProperty()
        .bind(
            Bindings.createStringBinding(
                () -> model.closeUp().get().map(ReadingWords::shift).orElse(""), model.closeUp()));
    shift.managedProperty().bind(shift.textProperty().isNotEmpty());
    VBox.setVgrow(closeUp, Priority.ALWAYS);
    VBox both = new VBox(shift, closeUp);
    both.getStyleClass().add("column");
    return both;
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

  /**
   * Sentences, legend and hearing tools beside the page and the close-up; or with large text all in
   * one column. It is scrolled where it does not fit, and the primary button stays below it.
   */
  private Region arranged(PageView view) {
    view.minHeightProperty().unbind();
    view.prefHeightProperty().unbind();
    foot.getChildren().remove(again.node());
    VBox column = new VBox();
    column.getStyleClass().add("column");
    if (stacked) {
      view.minHeightProperty().bind(root.heightProperty().multiply(PAGE_SHARE));
      view.prefHeightProperty().bind(view.minHeightProperty());
      unbound(details, tools);
      column
          .getChildren()
          .setAll(head(), details, view, pointed(view), legend, shift(), tools, again.node());
      return scroll(column);
    }
    foot.getChildren().add(foot.getChildren().size() - 1, again.node());
    view.setMinHeight(LEAST_PAGE_HEIGHT * scale());
    view.setPrefHeight(LEAST_PAGE_HEIGHT * scale());
    VBox.setVgrow(view, Priority.ALWAYS);
    VBox page = new VBox(view, pointed(view), shift());
    page.getStyleClass().add("column");
    ScrollPane words = scroll(details);
    words.setAccessibleText(Texts.of("read.words"));
    VBox.setVgrow(words, Priority.ALWAYS);
    VBox said = new VBox(words, legend, tools);
    said.getStyleClass().add("column");
    HBox both = beside(page, said);
    VBox.setVgrow(both, Priority.ALWAYS);
    column.getChildren().setAll(head(), both);
    ScrollPane all = scroll(column);
    all.setFitToHeight(true);
    all.setFocusTraversable(false);
    return all;
  }

  private static void unbound(Region... regions) {
    for (Region region : regions) {
      region.minWidthProperty().unbind();
      region.prefWidthProperty().unbind();
      region.setPrefWidth(Region.USE_COMPUTED_SIZE);
      region.setMinWidth(Region.USE_COMPUTED_SIZE);
    }
  }

  private HBox beside(Region first, Region second) {
    second.prefWidthProperty().bind(root.widthProperty().multiply(BESIDE_SHARE));
    second.minWidthProperty().bind(second.prefWidthProperty());
    first.setMinWidth(0);
    HBox.setHgrow(first, Priority.ALWAYS);
    HBox both = new HBox(first, second);
    both.getStyleClass().add("beside");
    return both;
  }

  private static ScrollPane scroll(Region content) {
    ScrollPane scroll = new ScrollPane(content);
    scroll.setFitToWidth(true);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    scroll.getStyleClass().add("words");
    return scroll;
  }

  private void words() {
    advice.getChildren().setAll(model.headline().stream().map(this::said).toList());
    details.getChildren().setAll(model.details().stream().map(this::said).toList());
  }

  private Labeled said(Sentence sentence) {
    Labeled label = sentence.steps().isEmpty() ? new Label(sentence.text()) : leading(sentence);
    label.setWrapText(true);
    label.setMinHeight(Region.USE_PREF_SIZE);
    label.getStyleClass().add("sentence");
    return label;
  }

  /** A sentence that leads to the notes that it tells of. */
  private Button leading(Sentence sentence) {
    Button button = new Button(sentence.text());
    button.getStyleClass().setAll("leading");
    button.setMaxWidth(Double.MAX_VALUE);
    button.setOnAction(e -> model.goTo(sentence));
    return button;
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

  /** What is heard, and which shift is in close-up. */
  private Region tools() {
    FlowPane keys = new FlowPane();
    keys.getStyleClass().add("keys");
    keys.getChildren()
        .addAll(
            sound.lit(button("read.hear", "H", model::hear), Hearing.TAKE),
            sound.lit(button("read.loop", "L", model::loopShift), Hearing.SHIFT),
            sound.lit(button("read.model", "K", model::hearModel), Hearing.MODEL),
            speed(),
            button("read.nextShift", "N", model::nextShift));
    VBox all = new VBox(keys, sound.node());
    all.setMinHeight(Region.USE_PREF_SIZE);
    return all;
  }

  private VBox foot() {
    Button primary = button("read.again", Texts.of("key.space"), actions::again);
    primary.getStyleClass().add("main-action");
    FlowPane keys = new FlowPane();
    keys.getStyleClass().addAll("keys", "after");
    keys.managedProperty().bind(there());
    keys.visibleProperty().bind(there());
    keys.getChildren()
        .addAll(
            primary,
            button("read.slower", "S", actions::slower),
            button("read.faster", "F", actions::faster),
            button("read.anotherJoin", "J", actions::anotherJoin));
    Label line = new Label();
    line.getStyleClass().add("off");
    line.setWrapText(true);
    line.textProperty().bind(model.line());
    line.managedProperty().bind(model.line().isNotEmpty());
    return new VBox(line, progress(), keys);
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
