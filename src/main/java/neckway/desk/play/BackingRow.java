package neckway.desk.play;

import java.util.function.Function;
import javafx.beans.value.ObservableValue;
import javafx.scene.Node;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;
import neckway.band.Feel;
import neckway.desk.Texts;
import neckway.desk.VolumeControl;

/** Chooses a backing in place of the click: which chords, which metre, and how loud. */
final class BackingRow {
  private final VBox choice = new VBox();
  private final HBox volume;

  BackingRow(BackingChoice backing) {
    CheckBox plays = new CheckBox(Texts.of("play.backing"));
    plays.setWrapText(true);
    plays.selectedProperty().bindBidirectional(backing.plays());
    ComboBox<String> rows = box("play.backing.row", BackingRow::rowName);
    rows.getItems().setAll(BackingChoice.rows());
    rows.valueProperty().bindBidirectional(backing.row());
    ComboBox<Feel> feels = box("play.backing.feel", Feel::word);
    feels.getItems().setAll(Feel.values());
    feels.valueProperty().bindBidirectional(backing.feel());
    FlowPane boxes = new FlowPane(rows, feels);
    boxes.getStyleClass().add("backing");
    Label why = new Label(Texts.of("play.backing.why"));
    why.getStyleClass().add("why");
    why.setWrapText(true);
    volume = VolumeControl.backing(backing.percent());
    for (Node each : new Node[] {boxes, why, volume}) {
      onlyWhile(each, backing.plays());
    }
    choice.getStyleClass().add("column");
    choice.getChildren().addAll(plays, boxes, why);
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

  /** Its volume, which can be turned in a run too. */
  Node volume() {
    return volume;
  }
}
