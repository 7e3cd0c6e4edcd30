package neckway.desk;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import neckway.file.SettingsFile;
import neckway.words.Tongue;
import neckway.words.Wording;

/** The languages that the window speaks. */
public enum Language {
  /** Where nothing else is asked for. */
  ENGLISH(Locale.ENGLISH, Tongue.ENGLISH),
  GERMAN(Locale.GERMAN, Tongue.GERMAN);

  /** The name in the settings file; its values are language codes of ISO 639-1. */
  public static final String SETTING = "language";

  private final Locale locale;
  private final Tongue tongue;

  Language(Locale locale, Tongue tongue) {
    this.locale = locale;
    this.tongue = tongue;
  }

  /**
   * The language that the settings name; if they name none of these, the system's; else English.
   */
  public static Language of(SettingsFile settings, Locale system) {
    return chosen(settings).or(() -> coded(system.getLanguage())).orElse(ENGLISH);
  }

  /** The language that is spoken before the settings are read. */
  public static Language spoken() {
    return Arrays.stream(values())
        .filter(language -> language.tongue == Wording.tongue())
        .findAny()
        .orElse(ENGLISH);
  }

  /** The language that the settings name. */
  static Optional<Language> chosen(SettingsFile settings) {
    return settings.text(SETTING).flatMap(Language::coded);
  }

  private static Optional<Language> coded(String code) {
    return Arrays.stream(values()).filter(language -> language.code().equals(code)).findAny();
  }

  /** Its code of ISO 639-1, such as "de". */
  public String code() {
    return locale.getLanguage();
  }

  /** How dates and numbers are written. */
  Locale locale() {
    return locale;
  }

  /** In which language the rooms below say their sentences. */
  Tongue tongue() {
    return tongue;
  }

  /** A name as it stands within a sentence: German nouns keep their capital. */
  String within(String name) {
    return this == GERMAN ? name : name.toLowerCase(locale);
  }
}
