package neckway.cli.option;

import neckway.neck.BadInput;

/** Checks numbers given as options. */
final class Ranges {
  private Ranges() {}

  /**
   * The number, if it lies within bounds.
   *
   * @throws BadInput naming the option and the bounds
   */
  static double within(String option, double value, double least, double most) {
    if (!(value >= least && value <= most)) {
      throw new BadInput(
          "%s %s: give %s to %s".formatted(option, plain(value), plain(least), plain(most)));
    }
    return value;
  }

  private static String plain(double value) {
    return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
  }
}
