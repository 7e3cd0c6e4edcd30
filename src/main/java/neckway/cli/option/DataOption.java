package neckway.cli.option;

import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Consumer;
import neckway.log.DataFolder;
import neckway.log.RunLog;
import picocli.CommandLine.Option;

/** Where the log lies, and whose runs are meant. */
public final class DataOption {
  @Option(names = "--data", paramLabel = "DIR")
  private Path folder;

  @Option(names = "--player", paramLabel = "NAME")
  private String player;

  /** The folder, whether it exists or not. */
  public Path folder() {
    return folder == null ? DataFolder.usual() : folder;
  }

  /** The folder, where one is named. */
  public Optional<Path> named() {
    return Optional.ofNullable(folder);
  }

  /** The player, where one is named. */
  public Optional<String> player() {
    return Optional.ofNullable(player).map(String::strip).filter(name -> !name.isEmpty());
  }

  /**
   * Opens the log.
   *
   * @param complaints told in one line where it was damaged
   */
  public RunLog open(Consumer<String> complaints) {
    return RunLog.open(folder(), complaints);
  }
}
