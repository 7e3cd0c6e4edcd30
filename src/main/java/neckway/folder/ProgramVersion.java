package neckway.folder;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;
import neckway.words.Tongue;
import neckway.words.Wording;

/**
 * The program's version. What it made stands until another version comes, whichever of its commands
 * or windows made it.
 */
final class ProgramVersion {
  private static final String RESOURCE = "/neckway/cli/version.properties";

  private ProgramVersion() {}

  static String number() {
    Properties properties = new Properties();
    try (InputStream in = ProgramVersion.class.getResourceAsStream(RESOURCE)) {
      properties.load(in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return properties.getProperty("version");
  }

  /**
   * The version, and the language where it is not English: what was said in another language, or by
   * another version, is said anew.
   */
  static String andLanguage() {
    return Wording.tongue() == Tongue.ENGLISH ? number() : number() + "\n" + Wording.tongue();
  }
}
