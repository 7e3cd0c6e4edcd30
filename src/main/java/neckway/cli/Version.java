package neckway.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Properties;
import picocli.CommandLine.IVersionProvider;

/** The program's version, which the build writes from its project file into a resource. */
final class Version implements IVersionProvider {
  private static final String RESOURCE = "version.properties";

  @Override
  public String[] getVersion() {
    return new String[] {"neckway " + number()};
  }

  /** Its version, and the size and time of the file that it runs from, so that builds differ. */
  static String ofProgram() {
    try {
      Path file =
          Path.of(Version.class.getProtectionDomain().getCodeSource().getLocation().toURI());
      return number() + " " + Files.size(file) + " " + Files.getLastModifiedTime(file);
    } catch (IOException | URISyntaxException e) {
      return number();
    }
  }

  private static String number() {
    Properties properties = new Properties();
    try (InputStream in = Version.class.getResourceAsStream(RESOURCE)) {
      properties.load(in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return properties.getProperty("version");
  }
}
