package neckway.log;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Where takes lie where nobody names a folder: with the player's music. */
public final class MusicFolder {
  /** As xdg-user-dirs has it: a path in quotes, absolute or below the home folder. */
  private static final Pattern LINE =
      Pattern.compile("\\s*XDG_MUSIC_DIR\\s*=\\s*\"((?:[^\"\\\\]|\\\\.)*)\"\\s*");

  private static final String HOME = "$HOME/";

  private MusicFolder() {}

  /**
   * {@code Neckway} in the folder for music: on Linux the one that {@code user-dirs.dirs} names,
   * else {@code Music} in the home folder. It need not exist yet.
   */
  public static Path usual() {
    Path home = Path.of(System.getProperty("user.home", "."));
    String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
    if (system.contains("win") || system.contains("mac")) {
      return home.resolve("Music").resolve("Neckway");
    }
    String named = System.getenv("XDG_MUSIC_DIR");
    if (named != null && Path.of(named).isAbsolute()) {
      return Path.of(named).resolve("Neckway");
    }
    String config = System.getenv("XDG_CONFIG_HOME");
    Path folder = config == null || config.isBlank() ? home.resolve(".config") : Path.of(config);
    return of(lines(folder.resolve("user-dirs.dirs")), home);
  }

  /** The same by the lines of {@code user-dirs.dirs}; the last one that names it counts. */
  static Path of(List<String> lines, Path home) {
    Optional<Path> named = Optional.empty();
    for (String line : lines) {
      Matcher music = LINE.matcher(line);
      if (music.matches()) {
        named = path(music.group(1).replaceAll("\\\\(.)", "$1"), home);
      }
    }
    // a folder that is the home folder itself stands for none
    return named
        .filter(folder -> !folder.normalize().equals(home.normalize()))
        .orElse(home.resolve("Music"))
        .resolve("Neckway");
  }

  private static Optional<Path> path(String text, Path home) {
    try {
      if (text.startsWith(HOME)) {
        return Optional.of(home.resolve(text.substring(HOME.length())));
      }
      return Optional.of(Path.of(text)).filter(Path::isAbsolute);
    } catch (InvalidPathException noPath) {
      return Optional.empty();
    }
  }

  private static List<String> lines(Path file) {
    if (!Files.isRegularFile(file)) {
      return List.of();
    }
    try {
      return Files.readAllLines(file, StandardCharsets.UTF_8);
    } catch (IOException unreadable) {
      // then music lies at its usual place
      return List.of();
    }
  }
}
