package neckway.desk.choose;

import javafx.util.StringConverter;
import neckway.desk.Texts;

/** A number as it is written in a field; what is no number counts as nothing written. */
final class NumberText extends StringConverter<Double> {
  @Override
  public String toString(Double number) {
    return number == null ? "" : Texts.plain(number);
  }

  @Override
  public Double fromString(String text) {
    try {
      return Double.valueOf(text.strip().replace(',', '.'));
    } catch (NumberFormatException e) {
      return null;
    }
  }
}
