package neckway.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;
import picocli.CommandLine.IVersionProvider;

/** The program's version, which the build writes from its project file into a resource. */
final class Version implements IVersionProvider {
  private static final String RESOURCE = "version.properties";

  @Override
  public String[] getVersion() {
    return new String[] {"neckway " + number()};
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
