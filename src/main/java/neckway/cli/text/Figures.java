package neckway.cli.text;

import neckway.cli.option.Ranges;
import neckway.words.Wording;

/** Numbers as they stand in prose. */
public final class Figures {
  private Figures() {}

  /** Without decimals where it is whole, else with as many as it has. */
  public static String plain(double number) {
    return Ranges.plain(number).replace(".", Wording.of("number.point"));
  }
}
