package neckway.cli.text;

import java.io.PrintWriter;
import java.util.Locale;
import neckway.neck.Tuning;
import neckway.string.GuitarProfile;
import neckway.string.StringProfile;
import neckway.string.Telling;

/** A guitar profile as a small table. */
public final class ProfileTable {
  private ProfileTable() {}

  public static void print(PrintWriter out, GuitarProfile profile, Tuning tuning) {
    out.println("string       tuned   stiffness           plucks   from the next higher string");
    for (StringProfile string : profile.strings()) {
      int number = string.string().number();
      String told =
          number == 1
              ? ""
              : switch (Telling.of(profile.apart(string.string()))) {
                case WELL -> "told apart well";
                case FAIRLY -> "told apart fairly";
                case NOT -> "not told apart";
              };
      out.println(
          String.format(
                  Locale.ROOT,
                  "%d  %-4s %+6.0f cents   %6.1f +- %2.0f %%  %10d       %s",
                  number,
                  tuning.names().get(tuning.count() - number),
                  noNegativeZero(string.centsOff()),
                  1e6 * Math.exp(string.lnStiffness()),
                  100 * string.spread(),
                  string.plucks(),
                  told)
              .stripTrailing());
    }
    out.println("Stiffness: B of the open string, in millionths, and how far one note strays.");
  }

  private static double noNegativeZero(double cents) {
    return Math.rint(cents) == 0 ? 0 : cents;
  }
}
