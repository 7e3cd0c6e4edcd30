package neckway.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;

/** The entry point: one class a command. */
@Command(
    name = "neckway",
    mixinStandardHelpOptions = true,
    version = "neckway 0.1.0",
    description = "Listens to a guitarist practise moving between scale shapes.",
    subcommands = {})
public final class Main {
  private Main() {}

  /** Runs a command and ends with its exit status. */
  public static void main(String[] args) {
    System.exit(new CommandLine(new Main()).execute(args));
  }
}
