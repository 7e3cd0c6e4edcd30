package neckway.cli.text;

import java.io.PrintWriter;
import java.util.Locale;
import neckway.practice.PlanItem;

/** An item of a plan as the terminal shows it. */
public final class PlanText {
  private static final String INDENT = " ".repeat(9);

  private PlanText() {}

  /** Prints an item: its minutes, what is done, and why. */
  public static void print(PrintWriter out, PlanItem item) {
    Wrapped.beside(out, String.format(Locale.ROOT, "%3d min  ", item.minutes()), what(item));
    Wrapped.beside(out, INDENT, item.why());
  }

  private static String what(PlanItem item) {
    return item.drill()
        .map(
            drill ->
                String.format(
                    Locale.ROOT,
                    "%s, from fret %d, %.0f beats a minute, %s",
                    drill.title(),
                    drill.start(),
                    drill.pulse().tempo(),
                    item.rounds() == 1 ? "one round" : item.rounds() + " rounds"))
        .orElse(item.kind().word());
  }
}
