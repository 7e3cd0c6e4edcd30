package neckway.desk.choose;

import java.util.function.Consumer;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.SpinnerValueFactory.DoubleSpinnerValueFactory;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Region;
import javafx.util.StringConverter;
import neckway.desk.DrillModel;
import neckway.desk.NumberSpinner;
import neckway.desk.Texts;
import neckway.drill.Pulse;

/** How the notes of a drill lie between the beats, and where the first one comes. */
final class FeelRows {
  /** The long-short of a triplet, in percent, as a shuffle begins. */
  private static final double TRIPLET_PERCENT = 200.0 / 3;

  private static final double LEAST_PERCENT = 51;
  private static final double PERCENT = 100;

  private enum Feel {
    STRAIGHT,
    SHUFFLE
  }

  private final DrillModel drill;
  private final GridPane group;
  private final int row;
  private final ComboBox<Feel> feel = new ComboBox<>();
  private final NumberSpinner ratio;
  private final NumberSpinner start;
  private final Label ratioName;
  private boolean filling;

  /**
   * @param group gets the rows from one on
   * @param say where a line for the player goes
   */
  FeelRows(DrillModel drill, GridPane group, int row, Consumer<String> say) {
    this.drill = drill;
    this.group = group;
    this.row = row;
    ratio =
        new NumberSpinner(
            "choosing.feel.ratio", LEAST_PERCENT, PERCENT * Pulse.MOST_SWING, 1, 1, say);
    start = new NumberSpinner("choosing.feel.start", 0, Pulse.LATEST_OFFSET, 1, 2, say);
    feel.getItems().setAll(Feel.values());
    feel.setConverter(new FeelWords());
    feel.setMaxWidth(Double.MAX_VALUE);
    ratioName = name("choosing.feel.ratio", ratio);
    group.addRow(row, name("choosing.feel", feel), feel);
    group.addRow(row + 2, name("choosing.feel.start", start), start);
    feel.valueProperty().addListener((o, before, now) -> feel(now));
    ratio
        .valueProperty()
        .addListener((o, before, now) -> ask(now, percent -> drill.swing(percent / PERCENT)));
    start.valueProperty().addListener((o, before, now) -> ask(now, drill::offsetBeats));
    fill();
  }

  private static Label name(String textKey, Node control) {
    Label label = new Label(Texts.of(textKey));
    label.setLabelFor(control);
    label.setMinWidth(Region.USE_PREF_SIZE);
    control.setAccessibleText(Texts.of(textKey));
    return label;
  }

  /** The long note's share is asked for only where there is a long note. */
  private void showRatio(boolean swings) {
    group.getChildren().removeAll(ratioName, ratio);
    if (swings) {
      group.addRow(row + 1, ratioName, ratio);
    }
  }

  private final class FeelWords extends StringConverter<Feel> {
    @Override
    public String toString(Feel value) {
      if (value == null) {
        return "";
      }
      return Texts.of(
          switch (value) {
            case STRAIGHT -> "choosing.feel.straight";
            case SHUFFLE -> "choosing.feel.shuffle";
          });
    }

    @Override
    public Feel fromString(String text) {
      throw new UnsupportedOperationException("nothing is typed here");
    }
  }

  private void feel(Feel wanted) {
    if (!filling && wanted != null) {
      drill.swing(wanted == Feel.STRAIGHT ? Pulse.STRAIGHT : TRIPLET_PERCENT / PERCENT);
      fill();
    }
  }

  private void ask(Double value, Consumer<Double> action) {
    if (!filling && value != null) {
      action.accept(value);
      fill();
    }
  }

  /** Shows what the drill has; what cannot be had is what it was. */
  void fill() {
    Pulse pulse = drill.drill().pulse();
    filling = true;
    try {
      boolean swings = pulse.swing() > Pulse.STRAIGHT;
      feel.setValue(swings ? Feel.SHUFFLE : Feel.STRAIGHT);
      if (swings) {
        ratio.show(PERCENT * pulse.swing());
      }
      ((DoubleSpinnerValueFactory) start.getValueFactory())
          .setAmountToStepBy(1.0 / pulse.notesPerBeat());
      start.show(pulse.offsetBeats());
      showRatio(swings);
    } finally {
      filling = false;
    }
  }
}
