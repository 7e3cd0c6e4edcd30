package neckway.cli.option;

import neckway.file.OutputFiles;
import picocli.CommandLine.Option;

/** Whether older files may be replaced by others. */
public final class OverwriteOption {
  @Option(names = "--overwrite")
  private boolean overwrite;

  /** For the files of a call. */
  public OutputFiles files() {
    return OutputFiles.ofCommand(overwrite);
  }
}
