package neckway.cli.text;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import neckway.neck.Tuning;
import neckway.string.GuitarProfile;
import neckway.string.StringProfile;
import neckway.string.Telling;

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
      lines.add("string       tuned   stiffness           plucks   from the next higher string");
    }
    for (StringProfile string : profile.strings()) {
      String name = tuning.names().get(tuning.count() - string.string().number());
      String told = told(profile, string);
      lines.addAll(
          width >= TABLE
              ? List.of(row(string, name, told))
              : Wrapped.proseLines(words(string, name, told), width));
    }
    lines.addAll(
        Wrapped.proseLines(
            "Stiffness: B of the open string, in millionths, and how far one note strays.", width));
    return lines;
  }

  private static String told(GuitarProfile profile, StringProfile string) {
    if (string.string().number() == 1) {
      return "";
    }
    return switch (Telling.of(profile.apart(string.string()))) {
      case WELL -> "told apart well";
      case FAIRLY -> "told apart fairly";
      case NOT -> "not told apart";
    };
  }

  private static String row(StringProfile string, String name, String told) {
    return String.format(
            Locale.ROOT,
            "%d  %-4s %+6.0f cents   %6.1f +- %2.0f %%  %10d       %s",
            string.string().number(),
            name,
            noNegativeZero(string.centsOff()),
            millionths(string),
            100 * string.spread(),
            string.plucks(),
            told)
        .stripTrailing();
  }

  private static String words(StringProfile string, String name, String told) {
    return String.format(
        Locale.ROOT,
        "%d %s: tuned %+.0f cents, stiffness %.1f +- %.0f %%, %d plucks%s",
        string.string().number(),
        name,
        noNegativeZero(string.centsOff()),
        millionths(string),
        100 * string.spread(),
        string.plucks(),
        told.isEmpty() ? "" : ", " + told + " from the next higher string");
  }

  private static double millionths(StringProfile string) {
    return 1e6 * Math.exp(string.lnStiffness());
  }

  private static double noNegativeZero(double cents) {
    return Math.rint(cents) == 0 ? 0 : cents;
  }
}
