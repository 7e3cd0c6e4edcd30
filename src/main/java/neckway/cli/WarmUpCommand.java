package neckway.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import neckway.cli.option.DrillOptions;
import neckway.cli.option.HelpOption;
import neckway.cli.option.JsonOption;
import neckway.cli.option.OverwriteOption;
import neckway.cli.option.Ranges;
import neckway.cli.option.ReachOptions;
import neckway.cli.text.PlanText;
import neckway.cli.text.Wrapped;
import neckway.file.JsonFile;
import neckway.file.OutputFiles;
import neckway.file.PlanFile;
import neckway.neck.Key;
import neckway.practice.Plan;
import neckway.practice.Reach;
import neckway.practice.WarmUp;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Leads a warm-up. */
@Command(name = "warmup")
final class WarmUpCommand implements Callable<Integer> {
  private static final Key FIRST_KEY = Key.parse("A minor");

  @Spec private CommandSpec spec;
  @Mixin private HelpOption help;
  @Mixin private ReachOptions options = new ReachOptions();
  @Mixin private JsonOption json = new JsonOption();
  @Mixin private OverwriteOption overwrite = new OverwriteOption();

  @Option(names = "--minutes", paramLabel = "MINUTES")
  private int minutes = 8;

  @Option(names = "--key", paramLabel = "KEY")
  private String key;

  @Option(names = "--input", paramLabel = "NAME")
  private String input;

  @Option(names = "--output", paramLabel = "NAME")
  private String output;

  @Option(names = "--print")
  private boolean print;

  @Override
  public Integer call() {
    overwrite.files().writes("--json", json.file(), OutputFiles.Kind.PLAN);
    Ranges.within("--minutes", minutes, WarmUp.SHORTEST, WarmUp.LONGEST);
    Plan plan = new WarmUp(reach(), options.played(complaints())).plan(minutes);
    PrintWriter out = spec.commandLine().getOut();
    if (json.toStandardOutput()) {
      out.print(JsonFile.text(PlanFile.toJson(plan)));
      return 0;
    }
    json.file().ifPresent(file -> JsonFile.write(file, PlanFile.toJson(plan)));
    Wrapped.print(out, WarmUpLead.care());
    out.println();
    boolean nobodyThere = System.console() == null;
    if (print || nobodyThere) {
      plan.items().forEach(item -> PlanText.print(out, item));
      return 0;
    }
    Interrupt interrupt = Interrupt.watch();
    try {
      WarmUpLead lead =
          new WarmUpLead(
              out,
              spec.commandLine().getErr(),
              Optional.ofNullable(input),
              Optional.ofNullable(output),
              interrupt);
      lead.through(plan, options.data());
      return 0;
    } finally {
      interrupt.unwatch();
    }
  }

  private Reach reach() {
    Optional<Key> named =
        Optional.ofNullable(key).map(k -> DrillOptions.option("--key", k, Key::parse));
    return options
        .of(
            played -> List.of(named.or(() -> played.stream().findFirst()).orElse(FIRST_KEY)),
            complaints())
        .get(0);
  }

  private Consumer<String> complaints() {
    return line -> spec.commandLine().getErr().println("neckway: " + line);
  }
}
