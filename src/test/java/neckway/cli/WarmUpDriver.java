package neckway.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import neckway.cli.option.DataOption;
import neckway.drill.PlayableDrill;
import neckway.file.DrillFile;
import neckway.practice.Plan;
import neckway.practice.PlanItem;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Leads through a warm-up of two steps, in a process of its own and without a terminal. */
@Command(name = "driver")
final class WarmUpDriver implements Runnable {
  @Mixin private DataOption data = new DataOption();
  @Parameters private Path drillFile;

  public static void main(String[] args) {
    new CommandLine(new WarmUpDriver()).execute(args);
    Interrupt.finished(0);
  }

  @Override
  public void run() {
    PlayableDrill drill = DrillFile.read(drillFile);
    PrintWriter out = new PrintWriter(System.out, true, StandardCharsets.UTF_8);
    Plan plan =
        new Plan(
            LocalDate.now(),
            2,
            List.of(
                new PlanItem(PlanItem.Kind.WARM_UP, 1, 0, Optional.empty(), "Hands first."),
                new PlanItem(
                    PlanItem.Kind.WARM_UP, 1, drill.rounds(), Optional.of(drill), "One shape.")));
    Interrupt interrupt = Interrupt.watch();
    new WarmUpLead(
            out,
            new PrintWriter(System.err, true, StandardCharsets.UTF_8),
            Optional.empty(),
            Optional.empty(),
            interrupt)
        .through(plan, data);
    out.flush();
    interrupt.unwatch();
  }
}
