package neckway.desk.play;

import java.util.List;
import javafx.animation.AnimationTimer;
import javafx.beans.binding.Bindings;
import javafx.geometry.Pos;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.scene.text.TextAlignment;
import neckway.desk.ClickModel;
import neckway.desk.DeskFrame;
import neckway.desk.LookModel;
import neckway.desk.OneKey;
import neckway.desk.Screen;
import neckway.desk.Texts;
import neckway.desk.VolumeControl;
import neckway.desk.page.Arrangement;
import neckway.desk.page.NeckStrip;
import neckway.desk.page.PageView;
import neckway.desk.play.PlayingModel.State;

/** Shows a run: page, count-in, small neck, and one line if something is off. */
public final class PlayingScreen implements Screen {
  /** From this crowding on, per cent, the button stands without its hint. */
  private static final int UNHINTED_PERCENT = 300;

  private static final double BASE = 100;
  private static final double SETTINGS_WIDTH = 360;
  private static final double STACKED_SHARE = 0.75;
  private static final double BESIDE_SHARE = 0.28;

  /** Between the parts of the foot and round them, pixels. */
  private static final double FOOT_GAPS = 120;

  /** Size of the count-in's figure, in sizes of the text, as far as the window is high enough. */
  private static final double COUNT_EMS = 17;

  private static final double COUNT_SHARE = 0.7;

  /** The same of the guess. */
  private static final double GUESS_EMS = 9;

  private static final double GUESS_SHARE = 0.3;

  /** The notes to come that are inked strongly: as many as a hand plays on two strings. */
  private static final int LEAD_NOTES = 4;

  /** The meter moves no more often than the eye needs; each move lays out the foot anew. */
  private static final long METER_NANOS = 80_000_000;

  /** Steps of the meter. */
  private static final double METER_STEPS = 50;

  private final PlayingModel model;
  private final LookModel look;
  private final ClickModel click;
  private final BorderPane root = new BorderPane();
  private final PageView page;
  private final NeckStrip neck;
  private final PulseLine pulse;
  private final Arrangement arrangement;
  private final VBox settings = new VBox();
  private final BackingRow backing;
  private final Button begin = new Button();
  private final Label hint = new Label();
  private final VBox beside = new VBox();
  private final HBox strip = new HBox();
  private final Label count = new Label();
  private final Label guess = new Label();

  /** Where to go next, as it was called. */
  private final Label call = new Label();

  private final VBox question = new VBox();
  private final StackPane middle = new StackPane();

  /** With large text the page is scrolled; what must be seen then stands over all of it. */
  private final StackPane whole = new StackPane(root);

  private final ProgressBar level = new ProgressBar();
  private long meteredNanos;

  private final AnimationTimer frames =
      new AnimationTimer() {
        @Override
        public void handle(long now) {
          model.frame();
          pulse.count();
          if (now - meteredNanos >= METER_NANOS) {
            meteredNanos = now;
            meter();
          }
        }
      };

  public PlayingScreen(PlayingModel model, LookModel look, ClickModel click) {
    this.model = model;
    this.look = look;
    this.click = click;
    page = PageView.inTurn(model.page().get());
    page.setAccessibleText(Texts.of("play.page"));
    page.lead(LEAD_NOTES);
    page.getStyleClass().add("run-page");
    neck = new NeckStrip(model.page().get());
    pulse = new PulseLine(model, look);
    backing = new BackingRow(model.settings().backing());
    root.getStyleClass().addAll("page", "playing");
    whole.getStylesheets().add(Screen.class.getResource("run.css").toExternalForm());
    arrangement = new Arrangement(root, top(), middle(), bottom());
    root.setFocusTraversable(true);
    root.setAccessibleRole(AccessibleRole.PARENT);
    RecordingRow.acceptDrops(
        whole,
        model.settings().backing(),
        model.settings().backing().plays().and(model.state().isEqualTo(State.READY)));
    model
        .page()
        .addListener(
            (o, old, now) -> {
              page.show(now);
              neck.show(now);
            });
    root.heightProperty().addListener(o -> figureSizes());
    root.widthProperty().addListener(o -> arrange());
    model.state().addListener(o -> arrange());
    look.dark().addListener(o -> dress());
    look.fontPercent().addListener(o -> dress());
    look.crowdingPercent().addListener(o -> dress());
    look.leftHanded().addListener(o -> dress());
    look.lowStringOnTop().addListener(o -> dress());
    dress();
  }

  private void meter() {
    double share = PlayingWords.meter(model.level().get());
    level.setProgress(Math.rint(METER_STEPS * share) / METER_STEPS);
  }

  private void dress() {
    double scale = look.fontPercent().get() / BASE;
    page.look(look.dark().get(), scale);
    neck.look(look.dark().get(), scale);
    arrange();
    boolean stacked = Arrangement.stacked(look);
    StackPane under = stacked ? whole : middle;
    if (count.getParent() != under) {
      ((StackPane) count.getParent()).getChildren().removeAll(count, question);
      under.getChildren().addAll(count, question);
    }
    figureSizes();
    settings.prefWidthProperty().unbind();
    if (stacked) {
      settings.prefWidthProperty().bind(root.widthProperty().multiply(STACKED_SHARE));
    } else {
      settings.setPrefWidth(SETTINGS_WIDTH * scale);
    }
    neck.turn(look.leftHanded().get(), look.lowStringOnTop().get());
    double window = look.windowFactor();
    double larger = window * Math.sqrt(scale / window);
    neck.setPrefSize(400 * Math.min(1.5 * window, larger), 150 * larger);
    neck.setMinSize(260, 110);
    neck.setMaxHeight(150 * larger);
  }

  /**
   * While a run goes on the page has the room of what is not needed until it is over. Where there
   * is room enough for all, nothing moves: what cannot be chosen now leaves its place empty.
   */
  private void arrange() {
    boolean stacked = Arrangement.stacked(look);
    boolean runs = model.state().get() != State.READY;
    arrangement.at(look, runs);
    pulse.showTitle(!stacked || !runs);
    double wide = neck.getPrefWidth() + settings.getPrefWidth() + BESIDE_SHARE * root.getWidth();
    boolean room = wide + FOOT_GAPS < root.getWidth();
    // what plays is chosen before, and takes the most room
    backing.choice().setManaged(!runs);
    backing.choice().setVisible(!runs);
    settings.setManaged(!runs || room);
    settings.setVisible(!runs);
    // where there is room for one of them, each while it is of use
    neck.setManaged(runs || room || stacked);
    neck.setVisible(runs || room || stacked);
    if (stacked && begin.getParent() != strip) {
      beside.getChildren().removeAll(begin, hint);
      strip.getChildren().setAll(begin, hint);
    } else if (!stacked && begin.getParent() != beside) {
      strip.getChildren().clear();
      beside.getChildren().addAll(0, List.of(begin, hint));
    }
    // the hint is in the help too; what is scrolled needs the room more
    boolean hinted = look.crowdingPercent().get() < UNHINTED_PERCENT;
    hint.setManaged(hinted);
    hint.setVisible(hinted);
    if (stacked) {
      // not scrolled, so that it can be pressed whatever is in sight
      root.setBottom(strip);
    }
  }

  private void figureSizes() {
    size(count, COUNT_EMS, COUNT_SHARE);
    size(guess, GUESS_EMS, GUESS_SHARE);
  }

  private void size(Label figure, double ems, double share) {
    double pixels = ems * DeskFrame.BASE_PIXELS * look.fontPercent().get() / 100;
    double most = root.getHeight() > 0 ? share * root.getHeight() : pixels;
    figure.setStyle("-fx-font-size: " + Math.round(Math.min(pixels, most)) + "px;");
  }

  private Region top() {
    Label line = new Label();
    line.getStyleClass().add("off");
    line.setWrapText(true);
    line.textProperty().bind(model.line());
    line.managedProperty().bind(model.line().isNotEmpty());
    line.visibleProperty().bind(model.line().isNotEmpty());
    Label said = new Label();
    said.getStyleClass().add("said");
    said.setWrapText(true);
    said.textProperty().bind(model.said());
    said.managedProperty().bind(model.said().isNotEmpty());
    Label sounds = new Label();
    sounds.getStyleClass().add("said");
    sounds.setWrapText(true);
    sounds.textProperty().bind(model.sounds());
    sounds.managedProperty().bind(model.sounds().isNotEmpty());
    call.getStyleClass().add("call");
    call.textProperty().bind(model.call());
    // its line is there before the first call, so that the page stays where it is
    call.managedProperty()
        .bind(
            Bindings.createBooleanBinding(
                () -> model.page().get().drill().isCalled(), model.page()));
    call.visibleProperty().bind(call.managedProperty());
    return new VBox(pulse, line, sounds, said, call);
  }

  private Region middle() {
    count.getStyleClass().add("count");
    count.textProperty().bind(model.count());
    count.visibleProperty().bind(model.count().isNotEmpty());
    count.setAccessibleRole(AccessibleRole.TEXT);
    question.getStyleClass().add("question");
    question.setAlignment(Pos.CENTER);
    // where there is little room they do not make the screen higher than the window
    question.setMinHeight(0);
    count.setMinHeight(0);
    question.visibleProperty().bind(model.state().isEqualTo(State.GUESSING));
    Label ask = new Label();
    ask.setWrapText(true);
    ask.textProperty()
        .bind(
            Bindings.createStringBinding(
                () -> Texts.of("play.guess", model.page().get().steps()), model.page()));
    guess.getStyleClass().add("guess");
    guess
        .textProperty()
        .bind(
            Bindings.when(model.guess().isEmpty())
                .then(Texts.of("play.guess.none"))
                .otherwise(model.guess()));
    Label keys = new Label(Texts.of("play.guess.keys"));
    keys.setWrapText(true);
    for (Label label : List.of(ask, keys)) {
      label.setTextAlignment(TextAlignment.CENTER);
    }
    question.getChildren().addAll(ask, guess, keys);
    count.setMouseTransparent(true);
    middle.getChildren().setAll(page, count, question);
    // over the end of the page: its beginning is what the player looks at now
    StackPane.setAlignment(count, Pos.BOTTOM_RIGHT);
    middle.setMinHeight(180);
    return middle;
  }

  private Region bottom() {
    begin.getStyleClass().add("begin");
    begin.setMinSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
    begin.setOnAction(e -> model.press());
    begin
        .textProperty()
        .bind(
            Bindings.createStringBinding(
                () -> PlayingWords.button(model.state().get()), model.state()));
    strip.getStyleClass().add("strip");
    HBox.setHgrow(hint, Priority.ALWAYS);
    hint.getStyleClass().add("hint");
    hint.setWrapText(true);
    hint.textProperty()
        .bind(
            Bindings.createStringBinding(
                () -> PlayingWords.hint(model.state().get(), model.guestPlayed()), model.state()));
    level.getStyleClass().add("level");
    level.setAccessibleText(Texts.of("play.level"));
    level.setMaxWidth(Double.MAX_VALUE);
    level.setProgress(0);
    Label levelName = new Label(Texts.of("play.level"));
    levelName.setLabelFor(level);
    HBox meter = new HBox(levelName, level);
    meter.getStyleClass().add("meter");
    HBox.setHgrow(level, Priority.ALWAYS);
    beside.getChildren().addAll(begin, hint, meter, VolumeControl.named(click), backing.volume());
    beside.getStyleClass().add("column");
    CallsRow calls = new CallsRow(model.settings().calls(), model.settings().backing().plays());
    CheckBox marks = new CheckBox(Texts.of("play.marks"));
    marks.selectedProperty().bindBidirectional(model.settings().liveMarks());
    Label why = new Label(Texts.of("play.marks.why"));
    why.getStyleClass().add("why");
    why.setWrapText(true);
    CheckBox guessFirst = new CheckBox(Texts.of("play.guess.first"));
    guessFirst.selectedProperty().bindBidirectional(model.settings().guessFirst());
    CheckBox repeat = new CheckBox(Texts.of("play.repeat"));
    repeat.selectedProperty().bindBidirectional(model.settings().repeat());
    repeat.disableProperty().bind(model.settings().guessFirst());
    Button guest = new Button(Texts.of("play.guest"));
    guest.getStyleClass().add("keyed");
    guest.setMinWidth(Region.USE_PREF_SIZE);
    guest.setOnAction(e -> model.beginGuest());
    settings
        .getChildren()
        .addAll(marks, why, guessFirst, repeat, backing.choice(), calls.node(), guest);
    for (CheckBox box : List.of(marks, guessFirst, repeat)) {
      box.setWrapText(true);
    }
    settings.getStyleClass().add("column");
    settings.disableProperty().bind(model.state().isNotEqualTo(State.READY));
    FlowPane bottom = new FlowPane(neck, beside, settings);
    bottom.getStyleClass().add("below");
    beside.prefWidthProperty().bind(root.widthProperty().multiply(BESIDE_SHARE));
    return bottom;
  }

  @Override
  public boolean takesKey(KeyEvent event) {
    Node focus = root.getScene() == null ? null : root.getScene().getFocusOwner();
    boolean ready = model.state().get() == State.READY;
    if (ready && !OneKey.takesText(focus) && backing.takesKey(event)) {
      return true;
    }
    if (event.isShortcutDown() || event.isAltDown()) {
      return false;
    }
    KeyCode code = event.getCode();
    if (OneKey.presses(event, focus)) {
      return true;
    }
    if (OneKey.is(event, focus)) {
      // what had the focus may go out of use with the run that begins
      root.requestFocus();
      model.press();
      return true;
    }
    if (code == KeyCode.ESCAPE) {
      model.escape();
      return true;
    }
    if (code == KeyCode.G && ready) {
      model.beginGuest();
      return true;
    }
    return code == KeyCode.PAGE_UP || isOfTheGuess(code);
  }

  /** Takes a figure of the guess, or takes one back. */
  private boolean isOfTheGuess(KeyCode code) {
    if (model.state().get() != State.GUESSING) {
      return false;
    }
    if (code == KeyCode.BACK_SPACE) {
      model.backspace();
      return true;
    }
    if (code.isDigitKey() || code.isKeypadKey() && code.getName().matches(".*\\d")) {
      String name = code.getName();
      model.digit(name.charAt(name.length() - 1) - '0');
      return true;
    }
    return false;
  }

  @Override
  public Parent node() {
    return whole;
  }

  @Override
  public void shown() {
    frames.start();
    model.shown();
    root.requestFocus();
  }

  @Override
  public void hidden() {
    model.hidden();
    model.frame();
  }
}
