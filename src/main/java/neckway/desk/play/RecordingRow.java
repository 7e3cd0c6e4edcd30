package neckway.desk.play;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.beans.binding.Bindings;
import javafx.beans.property.DoubleProperty;
import javafx.beans.value.ObservableValue;
import javafx.geometry.Pos;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.Tooltip;
import javafx.scene.input.DragEvent;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.TransferMode;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.stage.FileChooser;
import neckway.desk.NumberSpinner;
import neckway.desk.Texts;
import neckway.drill.Pulse;

/**
 * Chooses a recording of the player's own as a backing, and corrects its tempo and its first beat.
 */
final class RecordingRow extends VBox {
  private static final double TEMPO_STEP = 0.1;

  private final OwnRecording recording;
  private final Button choose = new Button(Texts.of("play.backing.file.choose"));
  private final Label complaint = new Label();

  RecordingRow(OwnRecording recording) {
    this.recording = recording;
    getStyleClass().add("column");
    choose.setMinWidth(Region.USE_PREF_SIZE);
    choose.setTooltip(new Tooltip(Texts.of("play.backing.file.choose.key")));
    choose.setOnAction(e -> choose());
    Label name = new Label();
    name.setWrapText(true);
    name.textProperty()
        .bind(Bindings.createStringBinding(recording::name, recording.file(), recording.line()));
    Label line = new Label();
    line.setWrapText(true);
    line.getStyleClass().add("backing-line");
    line.setAccessibleRole(AccessibleRole.TEXT);
    line.textProperty().bind(recording.line());
    there(line, recording.line().isNotEmpty());
    complaint.setWrapText(true);
    complaint.getStyleClass().add("backing-line");
    there(complaint, complaint.textProperty().isNotEmpty());
    there(name, name.textProperty().isNotEmpty());
    Node beat = beat();
    there(
        beat,
        Bindings.createBooleanBinding(() -> recording.file().get().isPresent(), recording.file()));
    getChildren().addAll(name, progress(), line, beat, complaint);
  }

  private static FlowPane row(Node... parts) {
    FlowPane row = new FlowPane(parts);
    row.getStyleClass().add("backing");
    row.setAlignment(Pos.CENTER_LEFT);
    return row;
  }

  private static void there(Node node, ObservableValue<Boolean> when) {
    node.visibleProperty().bind(when);
    node.managedProperty().bind(when);
  }

  private ProgressBar progress() {
    ProgressBar bar = new ProgressBar();
    bar.setAccessibleText(Texts.of("play.backing.file.progress"));
    bar.getStyleClass().add("level");
    bar.setMaxWidth(Double.MAX_VALUE);
    bar.progressProperty()
        .bind(
            Bindings.createDoubleBinding(
                () -> recording.progress().get().orElse(ProgressBar.INDETERMINATE_PROGRESS),
                recording.progress()));
    there(bar, recording.reading());
    return bar;
  }

  private Node beat() {
    NumberSpinner tempo =
        field("play.backing.file.tempo", Pulse.SLOWEST, Pulse.FASTEST, TEMPO_STEP, 2);
    follow(tempo, recording.tempo());
    NumberSpinner first =
        field(
            "play.backing.file.first",
            0,
            OwnRecording.LATEST_FIRST_BEAT,
            OwnRecording.NUDGE_SECONDS,
            3);
    follow(first, recording.firstBeat());
    first.setTooltip(new Tooltip(Texts.of("play.backing.file.first.keys")));
    Button half = button("play.backing.file.half", recording::half);
    half.setAccessibleText(Texts.of("play.backing.file.half.said"));
    Button twice = button("play.backing.file.twice", recording::twice);
    twice.setAccessibleText(Texts.of("play.backing.file.twice.said"));
    Button tap = button("play.backing.file.tap.button", recording::tap);
    tap.textProperty()
        .bind(
            Bindings.when(recording.sounds())
                .then(Texts.of("play.backing.file.tap.now"))
                .otherwise(Texts.of("play.backing.file.tap.button")));
    Button done = button("play.backing.file.tap.done", recording::hush);
    there(done, recording.sounds());
    VBox beat =
        new VBox(
            row(named("play.backing.file.tempo", tempo), half, twice),
            row(named("play.backing.file.first", first), tap, done));
    beat.getStyleClass().add("column");
    beat.disableProperty().bind(recording.reading());
    return beat;
  }

  private NumberSpinner field(String key, double least, double most, double step, int decimals) {
    NumberSpinner field = new NumberSpinner(key, least, most, step, decimals, complaint::setText);
    field.setAccessibleText(Texts.of(key));
    field.getStyleClass().add("short");
    return field;
  }

  private void follow(NumberSpinner field, DoubleProperty value) {
    field.show(value.get());
    value.addListener((o, old, now) -> field.show(now.doubleValue()));
    field
        .valueProperty()
        .addListener(
            (o, old, now) -> {
              if (now != null) {
                complaint.setText("");
                value.set(now);
              }
            });
  }

  private static HBox named(String key, Node field) {
    Label label = new Label(Texts.of(key));
    label.setLabelFor(field);
    label.setMinWidth(Region.USE_PREF_SIZE);
    HBox both = new HBox(label, field);
    both.getStyleClass().add("meter");
    return both;
  }

  private static Button button(String key, Runnable action) {
    Button button = new Button(Texts.of(key));
    button.getStyleClass().add("keyed");
    button.setMinWidth(Region.USE_PREF_SIZE);
    button.setOnAction(e -> action.run());
    return button;
  }

  /** Chooses the file. */
  Button chooser() {
    return choose;
  }

  /** Asks for the file. */
  private void choose() {
    FileChooser dialog = new FileChooser();
    dialog.setTitle(Texts.of("play.backing.file.choose"));
    recording
        .file()
        .get()
        .map(file -> file.getParent().toFile())
        .or(() -> Optional.ofNullable(System.getProperty("user.home")).map(File::new))
        .filter(File::isDirectory)
        .ifPresent(dialog::setInitialDirectory);
    Optional.ofNullable(dialog.showOpenDialog(getScene().getWindow()))
        .map(File::toPath)
        .ifPresent(recording::choose);
  }

  /** Takes a key that is for the recording; asked only where a recording is the backing. */
  boolean takesKey(KeyEvent event) {
    if (event.isShortcutDown()) {
      boolean opens = event.getCode() == KeyCode.O && !event.isAltDown();
      if (opens) {
        choose();
      }
      return opens;
    }
    if (event.getCode() == KeyCode.ESCAPE && recording.sounds().get()) {
      recording.hush();
      return true;
    }
    if (event.isAltDown() || recording.file().get().isEmpty() || recording.reading().get()) {
      return false;
    }
    switch (event.getCode()) {
      case T -> recording.tap();
      case COMMA -> nudge(event, -1);
      case PERIOD -> nudge(event, 1);
      default -> {
        return false;
      }
    }
    return true;
  }

  private void nudge(KeyEvent event, int way) {
    if (event.isShiftDown()) {
      recording.nudgeBeats(way);
    } else {
      recording.nudge(way * OwnRecording.NUDGE_SECONDS);
    }
  }

  /** Lets a recording be dropped on a node while a backing is asked for; it then is the backing. */
  static void acceptDrops(Node node, BackingChoice backing, ObservableValue<Boolean> open) {
    node.addEventHandler(
        DragEvent.DRAG_OVER,
        event -> {
          if (open.getValue() && dropped(event).isPresent()) {
            event.acceptTransferModes(TransferMode.COPY);
            event.consume();
          }
        });
    node.addEventHandler(
        DragEvent.DRAG_DROPPED,
        event -> {
          Optional<Path> file = open.getValue() ? dropped(event) : Optional.empty();
          if (file.isPresent()) {
            backing.play(file.get());
            event.setDropCompleted(true);
            event.consume();
          }
        });
  }

  /** One file alone that may be sound; all else is the window's. */
  private static Optional<Path> dropped(DragEvent event) {
    List<File> files =
        event.getDragboard().hasFiles() ? event.getDragboard().getFiles() : List.of();
    return files.size() == 1
        ? Optional.of(files.get(0).toPath())
            .filter(Files::isRegularFile)
            .filter(f -> !f.toString().toLowerCase(Locale.ROOT).endsWith(".json"))
        : Optional.empty();
  }
}
