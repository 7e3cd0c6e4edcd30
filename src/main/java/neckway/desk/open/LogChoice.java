package neckway.desk.open;

import java.nio.file.Path;
import java.util.Optional;

/**
 * Where runs are kept.
 *
 * @param folder where the log lies; empty: where the settings have it
 * @param player whose runs they are; empty: of who has no name
 * @param keeps whether runs are kept at all
 */
public record LogChoice(Optional<Path> folder, Optional<String> player, boolean keeps) {
  /** The usual place, nobody's name, and each run is kept. */
  public static final LogChoice USUAL = new LogChoice(Optional.empty(), Optional.empty(), true);
}
