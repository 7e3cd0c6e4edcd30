package neckway.cli.option;

import neckway.file.OutputFiles;
import picocli.CommandLine.Option;

/** Whether older files may be replaced by others. */
public final class OverwriteOption {
  @Option(
      names = "--overwrite",
      description =
          "Replaces an older file even where it is not of the kind that is written. Left out: only"
              + " a file of the same kind is replaced.")
  private boolean overwrite;

  /** For the files of a call. */
  public OutputFiles files() {
    return OutputFiles.ofCommand(overwrite);
  }
}
