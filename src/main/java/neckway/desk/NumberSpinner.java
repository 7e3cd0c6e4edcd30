package neckway.desk;

import java.util.function.Consumer;
import javafx.scene.control.Spinner;
import javafx.scene.control.SpinnerValueFactory.DoubleSpinnerValueFactory;

/** A field for a number, typed or stepped through with the arrow keys. */
public final class NumberSpinner extends Spinner<Double> {
  /**
   * @param textKey its name in the bundle
   * @param decimals that it is written with at most; 0: it has no fraction
   * @param complain where a line about what was typed goes
   */
  public NumberSpinner(
      String textKey,
      double least,
      double most,
      double step,
      int decimals,
      Consumer<String> complain) {
    DoubleSpinnerValueFactory values = new DoubleSpinnerValueFactory(least, most, least, step);
    values.setConverter(
        new NumberText(Texts.of(textKey), least, most, decimals, this::getValue, complain));
    setValueFactory(values);
    setEditable(true);
    getStyleClass().add("number");
    setMaxWidth(Double.MAX_VALUE);
    focusedProperty().addListener((o, was, is) -> cancelEdit());
  }

  /** Shows a number without asking anyone. */
  public void show(double number) {
    getValueFactory().setValue(number);
    cancelEdit();
  }
}
