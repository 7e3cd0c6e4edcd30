package neckway.desk.play;

import java.util.Locale;
import javafx.beans.binding.Bindings;
import javafx.beans.value.ObservableBooleanValue;
import javafx.scene.Node;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;
import neckway.desk.Texts;
import neckway.live.LiveSetup.CallTones;

/** Chooses whether switches are called, and whether calls sound. */
final class CallsRow {
  private final VBox choice = new VBox();

  /**
   * @param backed whether a backing plays, under which nothing is called
   */
  CallsRow(CallsChoice calls, ObservableBooleanValue backed) {
    CheckBox asked = box("play.calls");
    asked.selectedProperty().bindBidirectional(calls.calls());
    asked.disableProperty().bind(backed);
    ComboBox<CallTones> tones =
        BackingRow.box(
            "play.calls.tones",
            each -> Texts.of("play.calls.tones." + each.name().toLowerCase(Locale.ROOT)));
    tones.getItems().setAll(CallTones.values());
    tones.valueProperty().bindBidirectional(calls.tones());
    Label why = new Label(Texts.of("play.calls.why"));
    why.getStyleClass().add("why");
    why.setWrapText(true);
    for (Node each : new Node[] {tones, why}) {
      each.visibleProperty().bind(Bindings.and(calls.calls(), Bindings.not(backed)));
      each.managedProperty().bind(each.visibleProperty());
    }
    choice.getStyleClass().add("column");
    choice.getChildren().addAll(asked, why, tones);
  }

  private static CheckBox box(String key) {
    CheckBox box = new CheckBox(Texts.of(key));
    box.setWrapText(true);
    return box;
  }

  Node node() {
    return choice;
  }
}
