package neckway.desk.sound;

import java.io.File;
import java.util.Locale;
import java.util.concurrent.Executors;
import java.util.function.Function;
import javafx.animation.Animation;
import javafx.animation.KeyFrame;
import javafx.animation.Timeline;
import javafx.application.Platform;
import javafx.beans.binding.Bindings;
import javafx.beans.property.StringProperty;
import javafx.collections.ObservableList;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.Slider;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.stage.DirectoryChooser;
import javafx.util.Duration;
import javafx.util.StringConverter;
import neckway.desk.Desk;
import neckway.desk.FollowFocus;
import neckway.desk.Screen;
import neckway.desk.SideBySide;
import neckway.desk.Texts;
import neckway.file.RoundTripFile;

/** The sound room: shows its models, and asks for files. */
public final class SoundScreen implements Screen {
  private static final double METER_FLOOR_DB = 60;

  private final Desk desk;
  private final SoundModel model;
  private final BorderPane root = new BorderPane();
  private final ComboBox<String> input;
  private final Timeline refresh = new Timeline(new KeyFrame(Duration.seconds(1), e -> refresh()));

  /** On the devices of this machine. */
  public static SoundScreen onDevices(Desk desk) {
    return new SoundScreen(
        desk,
        new SoundModel(
            desk,
            new MachineDevices(),
            new RoundTripFile(),
            Executors.newSingleThreadExecutor(
                task -> {
                  Thread thread = new Thread(task, "sound devices");
                  thread.setDaemon(true);
                  return thread;
                }),
            Platform::runLater));
  }

  public SoundScreen(Desk desk, SoundModel model) {
    this.desk = desk;
    this.model = model;
    root.getStylesheets().add(Screen.class.getResource("run.css").toExternalForm());
    input = choice("sound.input", model.inputs(), model.input(), SoundScreen::device);
    VBox left = new VBox(devices(), comingIn(), trip());
    left.getStyleClass().add("room-column");
    VBox right = new VBox(new GuitarPane(model.guitar()).node());
    right.getStyleClass().addAll("room-column", "room-guitar");
    SideBySide page = new SideBySide(left, right);
    page.getStyleClass().add("page");
    ScrollPane scroll = new ScrollPane(page);
    scroll.setFitToWidth(true);
    scroll.setFocusTraversable(false);
    scroll.getStyleClass().add("scroll");
    FollowFocus.in(scroll);
    root.setCenter(scroll);
    root.addEventFilter(KeyEvent.KEY_PRESSED, this::key);
    refresh.setCycleCount(Animation.INDEFINITE);
  }

  private void refresh() {
    model.refresh();
  }

  private static String device(String name) {
    return name == null || name.isEmpty() ? Texts.of("sound.first") : name;
  }

  static Label words(String style) {
    Label label = new Label();
    label.setWrapText(true);
    label.getStyleClass().add(style);
    return label;
  }

  static Label title(String key) {
    Label title = new Label(Texts.of(key));
    title.getStyleClass().add("room-title");
    return title;
  }

  static ComboBox<String> choice(
      String key,
      ObservableList<String> items,
      StringProperty value,
      Function<String, String> shown) {
    ComboBox<String> box = new ComboBox<>(items);
    box.setConverter(
        new StringConverter<>() {
          @Override
          public String toString(String item) {
            return shown.apply(item);
          }

          @Override
          public String fromString(String text) {
            return text;
          }
        });
    box.valueProperty().bindBidirectional(value);
    box.setAccessibleText(Texts.of(key));
    box.setMaxWidth(Double.MAX_VALUE);
    return box;
  }

  static Node row(String key, Region control) {
    return row(key, control, new Region());
  }

  static Node row(String key, Region control, Region after) {
    Label name = new Label(Texts.of(key));
    name.setLabelFor(control);
    name.getStyleClass().add("room-name");
    return new NamedRow(name, control, after);
  }

  private Node devices() {
    ComboBox<String> output =
        choice("sound.output", model.outputs(), model.output(), SoundScreen::device);
    output.disableProperty().bind(model.trip().measuring());
    input.disableProperty().bind(model.trip().measuring());
    Slider click = new Slider(0, SoundModel.MOST_CLICK, model.click().get());
    click.setBlockIncrement(1);
    click.valueProperty().bindBidirectional(model.click());
    click.setAccessibleText(Texts.of("sound.click"));
    Label percent = new Label();
    percent.textProperty().bind(model.click().asString(Locale.ROOT, "%.0f %%"));
    percent.getStyleClass().add("room-figure");
    Label folder = words("room-path");
    folder.setMaxWidth(Double.MAX_VALUE);
    folder.textProperty().bind(model.takes());
    Button other = new Button(Texts.of("sound.takes.other"));
    other.setMinWidth(Button.USE_PREF_SIZE);
    other.setOnAction(e -> takes());
    return new VBox(
        title("sound.devices"),
        row("sound.input", input),
        row("sound.output", output),
        row("sound.click", click, percent),
        row("sound.takes", folder, other));
  }

  private void takes() {
    DirectoryChooser dialog = new DirectoryChooser();
    dialog.setTitle(Texts.of("sound.takes"));
    File now = new File(model.takes().get());
    if (now.isDirectory()) {
      dialog.setInitialDirectory(now);
    }
    File chosen = dialog.showDialog(root.getScene().getWindow());
    if (chosen != null) {
      model.takeFolder(chosen.toPath());
    }
  }

  private Node comingIn() {
    ProgressBar meter = new ProgressBar(0);
    meter.getStyleClass().add("level");
    meter.setMaxWidth(Double.MAX_VALUE);
    meter.setAccessibleText(Texts.of("play.level"));
    model
        .meter()
        .addListener(
            o -> {
              double db = 20 * Math.log10(model.meter().get() + 1e-9);
              meter.setProgress(Math.max(0, Math.min(1, 1 + db / METER_FLOOR_DB)));
            });
    Label line = words("room-line");
    line.textProperty().bind(model.line());
    Label note = new Label(SoundWords.note(model.tone().get()));
    note.getStyleClass().add("room-note");
    Label tuner = words("room-tuner");
    tuner.setText(model.tunerWords());
    Needle needle = new Needle();
    model
        .tone()
        .addListener(
            o -> {
              note.setText(SoundWords.note(model.tone().get()));
              tuner.setText(model.tunerWords());
              needle.show(model.tone().get());
            });
    VBox beside = new VBox(needle, tuner);
    beside.getStyleClass().add("room-beside");
    HBox.setHgrow(beside, Priority.ALWAYS);
    HBox tone = new HBox(note, beside);
    tone.getStyleClass().add("room-row");
    return new VBox(title("sound.in"), row("play.level", meter), line, tone);
  }

  private Node trip() {
    TripModel trip = model.trip();
    Label how = words("room-how");
    how.setText(Texts.of("trip.how"));
    Label known = words("room-known");
    known.textProperty().bind(trip.known());
    Label result = words("room-result");
    result.textProperty().bind(trip.result());
    result.managedProperty().bind(result.textProperty().isNotEmpty());
    Button measure = new Button();
    measure
        .textProperty()
        .bind(
            Bindings.createStringBinding(
                () -> Texts.of("trip.measure", Texts.plain(trip.percent().get())), trip.percent()));
    // not disabled while it measures, so that the focus stays
    measure.setOnAction(e -> trip.measure());
    return new VBox(title("trip.title"), known, how, measure, result);
  }

  private void key(KeyEvent event) {
    boolean typing = event.getTarget() instanceof TextInputControl;
    boolean plucking = model.guitar().stage().get() == GuitarModel.Stage.PLUCKING;
    if (typing || !plucking || event.isShortcutDown() || event.isAltDown()) {
      return;
    }
    if (event.getCode() == KeyCode.BACK_SPACE) {
      model.guitar().back();
    } else if (event.getCode() == KeyCode.ESCAPE) {
      model.guitar().stop();
    } else {
      return;
    }
    event.consume();
  }

  @Override
  public Parent node() {
    return root;
  }

  @Override
  public void shown() {
    model.shown();
    refresh.play();
    // what scrolls is in the window only once its skin is made
    root.applyCss();
    root.layout();
    input.requestFocus();
  }

  @Override
  public void hidden() {
    refresh.stop();
    model.hidden();
    desk.keep();
  }
}
