package neckway.cli.option;

import neckway.neck.BadInput;
import neckway.words.Wording;

/** Checks numbers given as options. */
public final class Ranges {
  private static final double MOST_DIGITS = 1e15;

  private Ranges() {}

  /**
   * The number, if it lies within bounds.
   *
   * @throws BadInput naming the option and the bounds
   */
  public static double within(String option, double value, double least, double most) {
    if (!(value >= least && value <= most)) {
      throw new BadInput(
          Wording.of("options.range", option, plain(value), plain(least), plain(most)));
    }
    return value;
  }

  /**
   * As it is typed in an option: without a point where it is whole, and not in digits without end.
   */
  public static String plain(double value) {
    boolean whole = value == Math.rint(value) && Math.abs(value) < MOST_DIGITS;
    return whole ? Long.toString((long) value) : Double.toString(value);
  }

  /** The same within a sentence: with a comma where the language has one. */
  static String said(double value) {
    return plain(value).replace(".", Wording.of("number.point"));
  }
}
