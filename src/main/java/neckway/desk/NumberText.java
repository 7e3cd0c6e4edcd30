package neckway.desk;

import java.util.function.Consumer;
import java.util.function.DoubleSupplier;
import javafx.util.StringConverter;

/**
 * A number as it is written in a field. What is no number or out of bounds is said in one line, and
 * the number stays what it was.
 */
public final class NumberText extends StringConverter<Double> {
  private final String name;
  private final double least;
  private final double most;
  private final int decimals;
  private final DoubleSupplier current;
  private final Consumer<String> complain;

  /**
   * @param name what the number is, for a complaint
   * @param decimals that it is written with at most; 0: it has no fraction
   * @param current what it is now
   * @param complain where a line for the player goes
   */
  NumberText(
      String name,
      double least,
      double most,
      int decimals,
      DoubleSupplier current,
      Consumer<String> complain) {
    this.name = name;
    this.least = least;
    this.most = most;
    this.decimals = decimals;
    this.current = current;
    this.complain = complain;
  }

  @Override
  public String toString(Double number) {
    return number == null ? "" : written(number, decimals);
  }

  /** A number as it is shown: so many decimals, none where it has no fraction. */
  public static String written(double number, int decimals) {
    return number == Math.rint(number) ? Texts.plain(number) : Texts.fixed(number, decimals);
  }

  @Override
  public Double fromString(String text) {
    String written = text.strip().replace(',', '.');
    boolean whole = decimals == 0;
    boolean number = written.matches(whole ? "\\d{1,6}" : "\\d{1,6}(\\.\\d*)?");
    double value = number ? Double.parseDouble(written) : 0;
    if (number && value >= least && value <= most) {
      return value;
    }
    complain.accept(
        Texts.of(
            whole ? "problem.whole" : "problem.number",
            Texts.within(name),
            text.strip(),
            written(least, decimals),
            written(most, decimals)));
    return current.getAsDouble();
  }
}
