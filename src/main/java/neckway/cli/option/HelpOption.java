package neckway.cli.option;

import picocli.CommandLine.Option;

/** {@code --help} of one command. */
public final class HelpOption {
  @Option(
      names = {"-h", "--help"},
      usageHelp = true)
  private boolean asked;
}
