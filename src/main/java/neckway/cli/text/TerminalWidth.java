package neckway.cli.text;

import java.util.Optional;

/** How many columns text may take. */
public final class TerminalWidth {
  /** Where nothing is known of the terminal. */
  private static final int USUAL = 80;

  /** A neck of an octave and a join with its reason can still be read in so many. */
  private static final int NARROWEST = 40;

  private TerminalWidth() {}

  /** As the shell says in COLUMNS, 40 at least; 80 where it says nothing. */
  public static int columns() {
    return columns(Optional.ofNullable(System.getenv("COLUMNS")));
  }

  static int columns(Optional<String> said) {
    return said.map(String::strip)
        .filter(columns -> columns.matches("-?\\d{1,6}"))
        .map(columns -> Math.max(NARROWEST, Integer.parseInt(columns)))
        .orElse(USUAL);
  }
}
