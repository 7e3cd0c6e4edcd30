package neckway.log;

import java.nio.file.Path;
import java.util.Locale;

/** Where the log lies where nobody names a folder: the platform's own place for data. */
public final class DataFolder {
  private DataFolder() {}

  /**
   * On Linux as the XDG Base Directory Specification 0.8 has it, on Windows the local application
   * data, on a Mac the library's application support. It need not exist yet.
   */
  public static Path usual() {
    String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
    Path home = Path.of(System.getProperty("user.home", "."));
    if (system.contains("win")) {
      return under(System.getenv("LOCALAPPDATA"), home).resolve("Neckway");
    }
    if (system.contains("mac")) {
      return home.resolve("Library").resolve("Application Support").resolve("Neckway");
    }
    return under(System.getenv("XDG_DATA_HOME"), home.resolve(".local").resolve("share"))
        .resolve("neckway");
  }

  private static Path under(String given, Path otherwise) {
    return given == null || given.isBlank() ? otherwise : Path.of(given);
  }
}
