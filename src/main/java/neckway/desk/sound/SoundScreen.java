package neckway.desk.sound;

import java.io.File;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Executors;
import java.util.function.Function;
import javafx.animation.Animation;
import javafx.animation.KeyFrame;
import javafx.animation.Timeline;
import javafx.application.Platform;
import javafx.beans.binding.Bindings;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.StringProperty;
import javafx.beans.value.ObservableValue;
import javafx.collections.ObservableList;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
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
import neckway.desk.VolumeControl;
import neckway.desk.play.LevelWatch;
import neckway.file.RoundTripFile;

/** The sound room: shows its models, and asks for files. */
public final class SoundScreen implements Screen {
  private static final double METER_FLOOR_DB = 60;

  /** Below this a guitar is too quiet, as {@link neckway.desk.play.LevelWatch} has it. */
  private static final double QUIET_DB = LevelWatch.QUIET_DBFS;

  /** No note's name is wider. */
  private static final String WIDE_NOTE = "G#4";

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
    input = device("sound.input", model.inputs(), model.input(), model.firstInput());
    VBox left = new VBox(comingIn(), devices(), trip());
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

  /** A choice of device; while none is asked for it names the one that is taken. */
  private static ComboBox<String> device(
      String key,
      ObservableList<String> names,
      StringProperty chosen,
      ReadOnlyStringProperty taken) {
    Function<String, String> shown =
        name -> SoundWords.choice(name == null ? "" : name, taken.get());
    ComboBox<String> box = choice(key, names, chosen, shown);
    ChosenCell cell = new ChosenCell(shown);
    box.setButtonCell(cell);
    taken.addListener(o -> cell.tell());
    return box;
  }

  /** The words in a closed box, which may change while the choice stays. */
  private static final class ChosenCell extends ListCell<String> {
    private final Function<String, String> words;

    ChosenCell(Function<String, String> words) {
      this.words = words;
    }

    @Override
    protected void updateItem(String item, boolean empty) {
      super.updateItem(item, empty);
      tell();
    }

    void tell() {
      setText(isEmpty() ? "" : words.apply(getItem()));
    }
  }

  /** What is wrong with the field above; takes room only where something is. */
  static Label fault(ObservableValue<String> words) {
    Label fault = words("room-fault");
    fault.textProperty().bind(words);
    fault.managedProperty().bind(fault.textProperty().isNotEmpty());
    fault.visibleProperty().bind(fault.textProperty().isNotEmpty());
    return fault;
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
    box.setConverter(shown(shown));
    box.valueProperty().bindBidirectional(value);
    box.setAccessibleText(Texts.of(key));
    box.setMaxWidth(Double.MAX_VALUE);
    return box;
  }

  private static StringConverter<String> shown(Function<String, String> words) {
    return new StringConverter<>() {
      @Override
      public String toString(String item) {
        return words.apply(item);
      }

      @Override
      public String fromString(String text) {
        return text;
      }
    };
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
        device("sound.output", model.outputs(), model.output(), model.firstOutput());
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
        fault(model.inputTrouble()),
        row("sound.output", output),
        fault(model.outputTrouble()),
        row("sound.click", click, percent),
        row("volume.name", VolumeControl.slider(model.volume()), volumePercent()),
        row("sound.takes", folder, other));
  }

  private Label volumePercent() {
    Label percent = new Label();
    percent
        .textProperty()
        .bind(model.volume().share().multiply(100).asString(Locale.ROOT, "%.0f %%"));
    percent.getStyleClass().add("room-figure");
    return percent;
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
    meter.getStyleClass().addAll("level", "room-level");
    meter.setMaxWidth(Double.MAX_VALUE);
    meter.setAccessibleText(Texts.of("play.level"));
    model.meter().addListener(o -> meter.setProgress(share(model.meter().get())));
    ScaleNames levels =
        new ScaleNames(
            1 + QUIET_DB / METER_FLOOR_DB,
            1,
            Texts.of("sound.level.low"),
            Texts.of("sound.level.good"),
            Texts.of("sound.level.high"));
    VBox level = new VBox(meter, levels);
    Reserved line = Reserved.of("room-line", model.line(), SoundWords.levels());
    Label note = new Label(SoundWords.note(model.tone().get()));
    note.getStyleClass().add("room-note");
    note.setMinWidth(Region.USE_PREF_SIZE);
    Label tuner = words("room-tuner");
    Needle needle = new Needle();
    Runnable tell =
        () -> {
          note.setText(SoundWords.note(model.tone().get()));
          tuner.setText(model.tunerWords());
          needle.show(model.tone().get());
        };
    model.tone().addListener(o -> tell.run());
    model.trip().measuring().addListener(o -> tell.run());
    tell.run();
    double zone = SoundWords.IN_TUNE_CENTS / Needle.HALF_CENTS / 2;
    ScaleNames cents =
        new ScaleNames(
            0.5 - zone,
            0.5 + zone,
            Texts.of("sound.tuner.low"),
            Texts.of("sound.tuner.good"),
            Texts.of("sound.tuner.high"));
    VBox scale = new VBox(needle, cents);
    VBox beside = new VBox(scale, new Reserved(tuner, SoundWords.tuners()));
    beside.getStyleClass().add("room-beside");
    HBox.setHgrow(beside, Priority.ALWAYS);
    HBox tone = new HBox(new Reserved(note, List.of(WIDE_NOTE)), beside);
    tone.getStyleClass().add("room-row");
    return new VBox(title("sound.in"), tone, row("play.level", level), line);
  }

  private static double share(double meter) {
    double db = 20 * Math.log10(meter + 1e-9);
    return Math.max(0, Math.min(1, 1 + db / METER_FLOOR_DB));
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
