package neckway.desk.play;

import java.util.function.Function;
import javafx.beans.value.ObservableValue;
import javafx.scene.Node;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;
import neckway.band.Feel;
import neckway.desk.Texts;
import neckway.desk.VolumeControl;
import neckway.desk.play.BackingChoice.Kind;

/**
 * Chooses a backing in place of the click: a band with its chords and metre, or a recording; and
 * how loud.
 */
final class BackingRow {
  private final BackingChoice backing;
  private final VBox choice = new VBox();
  private final RecordingRow recording;
  private final HBox volume;

  BackingRow(BackingChoice backing) {
    this.backing = backing;
    recording = new RecordingRow(backing.recording());
    CheckBox plays = new CheckBox(Texts.of("play.backing"));
    plays.setWrapText(true);
    plays.selectedProperty().bindBidirectional(backing.plays());
    ComboBox<Kind> kinds = box("play.backing.kind", BackingRow::kindName);
    kinds.getItems().setAll(Kind.values());
    kinds.valueProperty().bindBidirectional(backing.kind());
    ComboBox<String> rows = box("play.backing.row", BackingRow::rowName);
    rows.getItems().setAll(BackingChoice.rows());
    rows.valueProperty().bindBidirectional(backing.row());
    ComboBox<Feel> feels = box("play.backing.feel", Feel::word);
    feels.getItems().setAll(Feel.values());
    feels.valueProperty().bindBidirectional(backing.feel());
    FlowPane boxes = new FlowPane(kinds, rows, feels, recording.chooser());
    boxes.getStyleClass().add("backing");
    Label why = new Label(Texts.of("play.backing.why"));
    why.getStyleClass().add("why");
    why.setWrapText(true);
    volume = VolumeControl.backing(backing.percent());
    for (Node each : new Node[] {boxes, why, volume}) {
      onlyWhile(each, backing.plays());
    }
    for (Node each : new Node[] {rows, feels}) {
      onlyWhile(each, backing.kind().isEqualTo(Kind.BAND));
    }
    onlyWhile(recording.chooser(), backing.kind().isEqualTo(Kind.RECORDING));
    onlyWhile(recording, backing.plays().and(backing.kind().isEqualTo(Kind.RECORDING)));
    choice.getStyleClass().add("column");
    choice.getChildren().addAll(plays, boxes, recording, why);
  }

  private static String kindName(Kind kind) {
    return Texts.of(
        switch (kind) {
          case BAND -> "play.backing.kind.band";
          case RECORDING -> "play.backing.kind.recording";
        });
  }

  private static String rowName(String row) {
    return row.equals(BackingChoice.USUAL_ROW) ? Texts.of("play.backing.row.usual") : row;
  }

  static <T> ComboBox<T> box(String key, Function<? super T, String> name) {
    ComboBox<T> box = new ComboBox<>();
    box.setAccessibleText(Texts.of(key));
    box.setConverter(
        new StringConverter<>() {
          @Override
          public String toString(T value) {
            return value == null ? "" : name.apply(value);
          }

          @Override
          public T fromString(String typed) {
            throw new UnsupportedOperationException("nothing is typed here");
          }
        });
    return box;
  }

  private static void onlyWhile(Node node, ObservableValue<Boolean> there) {
    node.visibleProperty().bind(there);
    node.managedProperty().bind(there);
  }

  /** The box that turns it on, and what is chosen under it. */
  Node choice() {
    return choice;
  }

  /** Takes a key that is for what is chosen; asked only while nothing runs. */
  boolean takesKey(KeyEvent event) {
    return recording.isVisible() && recording.takesKey(event);
  }

  /** Its volume, which can be turned in a run too. */
  Node volume() {
    return volume;
  }
}
