package neckway.desk.app;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Optional;
import java.util.Properties;
import java.util.function.Supplier;

/**
 * What nobody foresaw, written where a player can read it and send it. It holds the program's own
 * words and the system's name and versions, and nothing that was played.
 */
final class Faults implements Thread.UncaughtExceptionHandler {
  private static final String NAME = "fault.txt";
  private static final String VERSION = "/neckway/cli/version.properties";
  private static final String TOLD = "fault-told.txt";

  /** A fault that comes back with each frame fills no disk. */
  private static final long MOST_BYTES = 200_000;

  private final Path file;
  private final String version;
  private final Supplier<LocalDateTime> now;
  private final PrintStream err;

  /**
   * @param folder where settings are kept
   * @param version of the program
   * @param err where it is printed too
   */
  Faults(Path folder, String version, Supplier<LocalDateTime> now, PrintStream err) {
    this.err = err;
    file = folder.resolve(NAME);
    this.version = version;
    this.now = now;
  }

  /** Beside the settings, by the program's own version. */
  static Faults beside(Path settings) {
    return new Faults(
        settings.toAbsolutePath().getParent(), version(), LocalDateTime::now, System.err);
  }

  /** The program's version. */
  static String version() {
    Properties properties = new Properties();
    try (InputStream in = Faults.class.getResourceAsStream(VERSION)) {
      properties.load(in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return properties.getProperty("version");
  }

  @Override
  public void uncaughtException(Thread thread, Throwable fault) {
    String report = report(thread, fault);
    err.print(report);
    try {
      Files.createDirectories(file.getParent());
      if (!Files.exists(file) || Files.size(file) < MOST_BYTES) {
        Files.writeString(
            file,
            report,
            StandardCharsets.UTF_8,
            StandardOpenOption.CREATE,
            StandardOpenOption.APPEND);
      }
    } catch (IOException e) {
      err.println(file + ": the fault could not be written down: " + e.getMessage());
    }
  }

  private String report(Thread thread, Throwable fault) {
    StringWriter text = new StringWriter();
    PrintWriter lines = new PrintWriter(text);
    lines.println("Neckway " + version + ", a fault of the program");
    lines.println("when: " + now.get().format(DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss")));
    lines.println(
        "system: "
            + System.getProperty("os.name")
            + " "
            + System.getProperty("os.version")
            + ", Java "
            + System.getProperty("java.version"));
    lines.println("thread: " + thread.getName());
    fault.printStackTrace(lines);
    lines.println();
    return text.toString();
  }

  /**
   * The report of an earlier start, under the name that it keeps from now on; told once.
   *
   * @return empty where nothing went wrong, or where it cannot be renamed
   */
  Optional<Path> earlier() {
    if (!Files.exists(file)) {
      return Optional.empty();
    }
    Path told = file.resolveSibling(TOLD);
    try {
      Files.move(file, told, StandardCopyOption.REPLACE_EXISTING);
      return Optional.of(told);
    } catch (IOException e) {
      // it lies there still, and is told at the next start
      return Optional.empty();
    }
  }
}
