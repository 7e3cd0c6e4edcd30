package neckway.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import neckway.cli.option.HelpOption;
import neckway.desk.app.DeskStart;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Opens the window. */
@Command(
    name = "desk",
    sortOptions = false,
    description = "Opens the window; so does 'neckway' alone.")
final class DeskCommand implements Callable<Integer> {
  @Mixin private HelpOption help = new HelpOption();

  @Option(
      names = "--drill",
      paramLabel = "FILE",
      description = "A drill to begin with, a neckway-drill/1 file. Left out: the last one.")
  private Path drill;

  @Override
  public Integer call() {
    open(Optional.ofNullable(drill));
    return 0;
  }

  /** Opens the window and comes back when it is closed. Nothing of it is loaded before. */
  static void open(Optional<Path> drill) {
    DeskStart.open(drill);
  }
}
