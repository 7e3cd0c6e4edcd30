package neckway.words;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Properties;

/** The files in which words stand, read as they are. */
public final class Bundles {
  private Bundles() {}

  /** What is in one. */
  public static Properties read(Path file) throws IOException {
    Properties bundle = new Properties();
    try (Reader reader = Files.newBufferedReader(file)) {
      bundle.load(reader);
    }
    return bundle;
  }

  /** Its keys in order; one that stands there twice is there twice. */
  public static List<String> keys(Path file) throws IOException {
    return Files.readAllLines(file).stream()
        .filter(line -> line.contains("=") && !line.startsWith("#"))
        .map(line -> line.substring(0, line.indexOf('=')).strip())
        .toList();
  }
}
