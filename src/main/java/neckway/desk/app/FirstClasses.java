package neckway.desk.app;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Loads the classes of the first screen on a second core while the toolkit starts, in the order in
 * which they will be asked for. They are loaded and verified and no more: nothing of theirs runs.
 */
final class FirstClasses {
  private static final String LIST = "first-classes.txt";

  private FirstClasses() {}

  /** Begins to load, and comes back at once. */
  static void load() {
    Thread thread = new Thread(FirstClasses::all, "first classes");
    thread.setDaemon(true);
    thread.start();
  }

  private static void all() {
    ClassLoader loader = FirstClasses.class.getClassLoader();
    for (String name : names()) {
      ready(name, loader);
    }
  }

  /** Whether there is such a class; it is loaded and verified then. */
  static boolean ready(String name, ClassLoader loader) {
    try {
      // asked for its constructors, a class is linked, but not initialised (HotSpot, JDK 17)
      Class.forName(name, false, loader).getDeclaredConstructors();
      return true;
    } catch (ClassNotFoundException | LinkageError e) {
      return false;
    }
  }

  /** The names, in order. */
  static List<String> names() {
    try (InputStream in = FirstClasses.class.getResourceAsStream(LIST);
        BufferedReader lines =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      return lines.lines().collect(Collectors.toList());
    } catch (IOException e) {
      throw new IllegalStateException(LIST + " cannot be read", e);
    }
  }
}
