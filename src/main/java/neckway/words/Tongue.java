package neckway.words;

import java.util.Locale;
import java.util.ResourceBundle;

/** The languages in which sentences are said. */
public enum Tongue {
  ENGLISH(Locale.ROOT),
  GERMAN(Locale.GERMAN);

  private final Locale locale;
  private final ResourceBundle sentences;

  Tongue(Locale locale) {
    this.locale = locale;
    this.sentences =
        ResourceBundle.getBundle(
            "neckway.words.sentences",
            locale,
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
  }

  /** How numbers are written. */
  Locale locale() {
    return locale;
  }

  /**
   * A sentence, or a part of one, as it stands in the bundle.
   *
   * @throws java.util.MissingResourceException if there is no such
   */
  String template(String key) {
    return sentences.getString(key);
  }
}
