package neckway.desk.choose;

import java.util.function.Consumer;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.SpinnerValueFactory.DoubleSpinnerValueFactory;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Region;
import javafx.util.StringConverter;
import neckway.desk.DrillModel;
import neckway.desk.NumberSpinner;
import neckway.desk.Texts;
import neckway.drill.Pulse;

/**
 * How the notes of a drill lie between the beats, and where the first one comes. Folded away while
 * all is straight and begins on the first beat.
 */
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
  private final ToggleButton more = new ToggleButton(Texts.of("choosing.feel.more"));
  private final ComboBox<Feel> feel = new ComboBox<>();
  private final NumberSpinner ratio;
  private final NumberSpinner start;
  private final Label feelName;
  private final Label ratioName;
  private final Label startName;
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
    feelName = name("choosing.feel", feel);
    ratioName = name("choosing.feel.ratio", ratio);
    startName = name("choosing.feel.start", start);
    more.getStyleClass().add("keyed");
    more.setMinWidth(Region.USE_PREF_SIZE);
    group.add(more, 0, row, 2, 1);
    more.selectedProperty().addListener(o -> unfold());
    feel.valueProperty().addListener((o, before, now) -> feel(now));
    ratio
        .valueProperty()
        .addListener((o, before, now) -> ask(now, percent -> drill.swing(percent / PERCENT)));
    start.valueProperty().addListener((o, before, now) -> ask(now, drill::offsetBeats));
    fill();
  }

  /** What is folded away is not there, for Tab neither. */
  private void unfold() {
    boolean swings = feel.getValue() == Feel.SHUFFLE;
    place(1, feelName, feel, more.isSelected());
    place(2, ratioName, ratio, more.isSelected() && swings);
    place(3, startName, start, more.isSelected());
  }

  private static Label name(String textKey, Node control) {
    Label label = new Label(Texts.of(textKey));
    label.setLabelFor(control);
    label.setMinWidth(Region.USE_PREF_SIZE);
    control.setAccessibleText(Texts.of(textKey));
    return label;
  }

  private void place(int below, Label label, Node control, boolean there) {
    boolean was = group.getChildren().contains(control);
    if (there && !was) {
      group.add(label, 0, row + below);
      group.add(control, 1, row + below);
    } else if (!there && was) {
      group.getChildren().removeAll(label, control);
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
      if (!pulse.isPlain()) {
        more.setSelected(true);
      }
    } finally {
      filling = false;
    }
    unfold();
  }
}
