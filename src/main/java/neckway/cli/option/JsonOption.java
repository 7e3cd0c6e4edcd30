package neckway.cli.option;

import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Option;

/** Where a command's result goes as JSON. */
public final class JsonOption {
  private static final Path STANDARD_OUTPUT = Path.of("-");

  @Option(names = "--json", paramLabel = "FILE")
  private Path json;

  /** Whether JSON is all that goes to standard output. */
  public boolean toStandardOutput() {
    return STANDARD_OUTPUT.equals(json);
  }

  /** The file that was named, if one was. */
  public Optional<Path> file() {
    return Optional.ofNullable(json).filter(file -> !toStandardOutput());
  }
}
