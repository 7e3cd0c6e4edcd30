package neckway.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import neckway.cli.option.DrillOptions;
import neckway.cli.option.HelpOption;
import neckway.cli.option.JsonOption;
import neckway.cli.option.OverwriteOption;
import neckway.cli.option.Ranges;
import neckway.cli.option.ReachOptions;
import neckway.cli.text.PlanText;
import neckway.drill.PlayableDrill;
import neckway.file.DrillFile;
import neckway.file.JsonFile;
import neckway.file.OutputFiles;
import neckway.file.PlanFile;
import neckway.neck.Key;
import neckway.practice.Plan;
import neckway.practice.PlanMaker;
import neckway.practice.Reach;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Says what to play next. */
@Command(name = "plan")
final class PlanCommand implements Callable<Integer> {
  private static final Key FIRST_KEY = Key.parse("A minor");
  private static final int LONGEST_MINUTES = 480;

  @Spec private CommandSpec spec;
  @Mixin private HelpOption help;
  @Mixin private ReachOptions options = new ReachOptions();
  @Mixin private JsonOption json = new JsonOption();
  @Mixin private OverwriteOption overwrite = new OverwriteOption();

  @Option(names = "--minutes", paramLabel = "MINUTES")
  private int minutes = 20;

  @Option(names = "--key", paramLabel = "KEY")
  private String key;

  @Option(names = "--set", paramLabel = "DRILL")
  private Path set;

  @Override
  public Integer call() {
    overwrite
        .files()
        .reads("--set", Optional.ofNullable(set))
        .writes("--json", json.file(), OutputFiles.Kind.PLAN);
    Ranges.within("--minutes", minutes, 1, LONGEST_MINUTES);
    Optional<PlayableDrill> first = Optional.ofNullable(set).map(DrillFile::read);
    Plan plan = new PlanMaker(reach()).plan(minutes, first);
    PrintWriter out = spec.commandLine().getOut();
    if (json.toStandardOutput()) {
      out.print(JsonFile.text(PlanFile.toJson(plan)));
      return 0;
    }
    plan.items().forEach(item -> PlanText.print(out, item));
    json.file().ifPresent(file -> JsonFile.write(file, PlanFile.toJson(plan)));
    return 0;
  }

  private Reach reach() {
    Optional<Key> named =
        Optional.ofNullable(key).map(k -> DrillOptions.option("--key", k, Key::parse));
    return options
        .of(
            played -> List.of(named.or(() -> played.stream().findFirst()).orElse(FIRST_KEY)),
            line -> spec.commandLine().getErr().println("neckway: " + line))
        .get(0);
  }
}
