package neckway.cli;

import picocli.CommandLine.Option;

/** {@code --help} of one command. */
final class HelpOption {
  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "Shows this help.")
  private boolean asked;
}
