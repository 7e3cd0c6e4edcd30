package neckway.cli.text;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import neckway.neck.Tuning;
import neckway.string.GuitarProfile;
import neckway.string.StringProfile;
import neckway.string.Telling;
import neckway.words.Wording;

/** A guitar profile as a small table. */
public final class ProfileTable {
  /** Columns of a row of the table; on a narrower terminal each string is told in words. */
  private static final int TABLE = 80;

  private ProfileTable() {}

  /** As wide as the terminal. */
  public static void print(PrintWriter out, GuitarProfile profile, Tuning tuning) {
    lines(profile, tuning, TerminalWidth.columns()).forEach(out::println);
  }

  /**
   * @param width columns there are, 40 or more
   */
  static List<String> lines(GuitarProfile profile, Tuning tuning, int width) {
    List<String> lines = new ArrayList<>();
    if (width >= TABLE) {
      lines.add(Wording.of("terminal.profile.head"));
    }
    for (StringProfile string : profile.strings()) {
      String name = tuning.names().get(tuning.count() - string.string().number());
      String told = told(profile, string);
      lines.addAll(
          width >= TABLE
              ? List.of(row(string, name, told))
              : Wrapped.proseLines(words(string, name, told), width));
    }
    lines.addAll(Wrapped.proseLines(Wording.of("terminal.profile.stiffness"), width));
    return lines;
  }

  private static String told(GuitarProfile profile, StringProfile string) {
    if (string.string().number() == 1) {
      return "";
    }
    return switch (Telling.of(profile.apart(string.string()))) {
      case WELL -> Wording.of("terminal.profile.told.well");
      case FAIRLY -> Wording.of("terminal.profile.told.fairly");
      case NOT -> Wording.of("terminal.profile.told.not");
    };
  }

  private static String row(StringProfile string, String name, String told) {
    return Wording.of(
            "terminal.profile.row",
            string.string().number(),
            written("%-4s", name),
            written("%+6.0f", noNegativeZero(string.centsOff())),
            written("%6.1f", millionths(string)),
            written("%2.0f", 100 * string.spread()),
            written("%10d", string.plucks()),
            told)
        .stripTrailing();
  }

  private static String words(StringProfile string, String name, String told) {
    String words =
        Wording.of(
            "terminal.profile.words",
            string.string().number(),
            name,
            written("%+.0f", noNegativeZero(string.centsOff())),
            written("%.1f", millionths(string)),
            written("%.0f", 100 * string.spread()),
            string.plucks());
    return told.isEmpty() ? words : Wording.of("terminal.profile.wordsTold", words, told);
  }

  private static String written(String format, Object value) {
    return String.format(Wording.tongue().locale(), format, value);
  }

  private static double millionths(StringProfile string) {
    return 1e6 * Math.exp(string.lnStiffness());
  }

  private static double noNegativeZero(double cents) {
    return Math.rint(cents) == 0 ? 0 : cents;
  }
}
