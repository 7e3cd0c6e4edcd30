package neckway.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/** The entry point: one class a command. */
@Command(
    name = "neckway",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    description = "Listens to a guitarist practise moving between scale shapes.",
    synopsisSubcommandLabel = "COMMAND",
    commandListHeading = "%nCommands:%n",
    footer =
        "%n'neckway' alone opens the window. 'neckway COMMAND --help' tells more about one of them.",
    subcommands = {
      MapCommand.class,
      ListenCommand.class,
      ReviewCommand.class,
      CalibrateCommand.class,
      PerformCommand.class,
      TuneCommand.class,
      DeskCommand.class
    })
public final class Main implements Callable<Integer> {
  private Main() {}

  /** Runs a command and ends with its exit status. */
  public static void main(String[] args) {
    int status =
        run(
            new PrintWriter(System.out, true, StandardCharsets.UTF_8),
            new PrintWriter(System.err, true, StandardCharsets.UTF_8),
            args);
    Interrupt.finished(status);
    Ending.with(status);
  }

  /**
   * Runs a command.
   *
   * @param out where its words go
   * @param err where complaints go
   * @return 0 done, 2 unusable arguments or files, 1 a fault of the program
   */
  static int run(PrintWriter out, PrintWriter err, String... args) {
    CommandLine line = new CommandLine(new Main());
    line.setOut(out);
    line.setErr(err);
    line.setCaseInsensitiveEnumValuesAllowed(true);
    line.setParameterExceptionHandler(Complaints::aboutArguments);
    line.setExecutionExceptionHandler(Complaints::whileRunning);
    int status = line.execute(args);
    out.flush();
    err.flush();
    return status;
  }

  /** No command was named: opens the window. */
  @Override
  public Integer call() {
    DeskCommand.open(Optional.empty());
    return 0;
  }
}
