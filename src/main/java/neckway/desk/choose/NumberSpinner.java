package neckway.desk.choose;

import java.util.function.Consumer;
import javafx.scene.control.Spinner;
import javafx.scene.control.SpinnerValueFactory.DoubleSpinnerValueFactory;
import neckway.desk.Texts;

/** A field for a number, typed or stepped through with the arrow keys. */
final class NumberSpinner extends Spinner<Double> {
  /**
   * @param textKey its name in the bundle
   * @param whole whether it has no fraction
   * @param complain where a line about what was typed goes
   */
  NumberSpinner(
      String textKey,
      double least,
      double most,
      double step,
      boolean whole,
      Consumer<String> complain) {
    DoubleSpinnerValueFactory values = new DoubleSpinnerValueFactory(least, most, least, step);
    values.setConverter(
        new NumberText(Texts.of(textKey), least, most, whole, this::getValue, complain));
    setValueFactory(values);
    setEditable(true);
    getStyleClass().add("number");
    setMaxWidth(Double.MAX_VALUE);
    focusedProperty().addListener((o, was, is) -> cancelEdit());
  }

  /** Shows a number without asking anyone. */
  void show(double number) {
    getValueFactory().setValue(number);
    cancelEdit();
  }
}
