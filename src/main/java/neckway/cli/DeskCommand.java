package neckway.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import neckway.cli.option.DataOption;
import neckway.cli.option.HelpOption;
import neckway.desk.app.DeskStart;
import neckway.desk.open.LogChoice;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Opens the window. */
@Command(name = "desk", sortOptions = false)
final class DeskCommand implements Callable<Integer> {
  @Mixin private HelpOption help = new HelpOption();

  @Option(names = "--drill", paramLabel = "FILE")
  private Path drill;

  @Mixin private DataOption data = new DataOption();

  @Option(names = "--no-log")
  private boolean noLog;

  @Override
  public Integer call() {
    DeskStart.open(Optional.ofNullable(drill), new LogChoice(data.named(), data.player(), !noLog));
    return 0;
  }

  /** Opens the window and comes back when it is closed. Nothing of it is loaded before. */
  static void open(Optional<Path> drill) {
    DeskStart.open(drill, LogChoice.USUAL);
  }
}
