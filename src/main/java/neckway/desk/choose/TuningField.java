package neckway.desk.choose;

import java.util.List;
import java.util.stream.Collectors;
import javafx.collections.FXCollections;
import javafx.scene.control.ComboBox;
import javafx.scene.control.ListCell;
import javafx.scene.control.Tooltip;
import neckway.desk.Texts;
import neckway.neck.BadInput;
import neckway.neck.Pitch;
import neckway.neck.Tuning;

/** A field for a tuning, by name where it has one: chosen from a list or typed as players do. */
final class TuningField extends ComboBox<String> {
  /** The tunings that are offered; any other can be typed. */
  private static final List<String> OFFERED =
      List.of(
          "standard",
          "drop D",
          "double drop D",
          "half step down",
          "whole step down",
          "drop C",
          "DADGAD",
          "open G",
          "open D",
          "E2 A2 D3 G3 C4 F4",
          "seven-string standard");

  TuningField() {
    setItems(
        FXCollections.observableList(OFFERED.stream().map(o -> words(Tuning.parse(o))).toList()));
    setEditable(true);
    getStyleClass().add("tuning");
    setMaxWidth(Double.MAX_VALUE);
    setCellFactory(list -> new Cell());
  }

  /** Shows a tuning. */
  void show(Tuning tuning) {
    setValue(words(tuning));
    // what was typed and means the tuning that is shown already is no change to the field's value
    getEditor().setText(words(tuning));
    setTooltip(new Tooltip(tuning.toString()));
  }

  /** Its name, or its letters where these alone tell it, or else its notes. */
  static String words(Tuning tuning) {
    String letters = tuning.lowToHigh().stream().map(Pitch::note).collect(Collectors.joining(" "));
    return tuning.name().orElse(isRead(letters, tuning) ? letters : tuning.toString());
  }

  private static boolean isRead(String words, Tuning as) {
    try {
      return Tuning.parse(words).equals(as);
    } catch (BadInput e) {
      return false;
    }
  }

  /** In the list the notes stand beside the name. */
  private static final class Cell extends ListCell<String> {
    @Override
    protected void updateItem(String words, boolean empty) {
      super.updateItem(words, empty);
      setText(empty || words == null ? null : listed(words));
    }

    private static String listed(String words) {
      String notes = Tuning.parse(words).toString();
      return words.equals(notes) ? notes : Texts.of("choosing.tuning.listed", words, notes);
    }
  }
}
