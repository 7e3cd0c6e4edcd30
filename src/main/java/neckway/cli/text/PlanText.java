package neckway.cli.text;

import java.io.PrintWriter;
import java.util.Locale;
import neckway.practice.PlanItem;
import neckway.words.Wording;

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
                Wording.of(
                    "terminal.plan.drill",
                    drill.spokenTitle(),
                    drill.start(),
                    Wording.fixed(drill.pulse().tempo(), 0),
                    Wording.counted("count.round", item.rounds(), item.rounds())))
        .orElseGet(() -> withoutDrill(item.kind()));
  }

  private static String withoutDrill(PlanItem.Kind kind) {
    return Wording.of(kind == PlanItem.Kind.REST ? "terminal.plan.rest" : "terminal.plan.warmUp");
  }
}
