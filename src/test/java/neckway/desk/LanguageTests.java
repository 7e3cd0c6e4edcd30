package neckway.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Locale;
import neckway.file.SettingsFile;
import neckway.words.Wording;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which language the window speaks, and how it writes numbers and dates in it. */
class LanguageTests {
  private static final LocalDateTime EVENING = LocalDateTime.of(2026, 3, 7, 19, 5);

  @TempDir private Path folder;

  @AfterEach
  void back() {
    Texts.speak(Language.ENGLISH);
  }

  @ParameterizedTest
  @CsvSource({
    "de-DE, '', GERMAN", "de-AT, '', GERMAN", "en-GB, '', ENGLISH", "fr-FR, '', ENGLISH",
    "de-DE, en, ENGLISH", "fr-FR, de, GERMAN", "de-DE, fr, GERMAN", "en-US, DE, ENGLISH"
  })
  void isTheSystemsUnlessTheSettingsNameAnother(String system, String kept, Language language) {
    SettingsFile settings = SettingsFile.at(folder.resolve("settings.json"));
    if (!kept.isEmpty()) {
      settings.put("language", kept);
    }
    assertThat(Language.of(settings, Locale.forLanguageTag(system))).isEqualTo(language);
  }

  @Test
  void germanWritesNumbersDatesAndNounsItsOwnWay() {
    Texts.speak(Language.GERMAN);
    assertThat(Texts.plain(132.5)).isEqualTo("132,5");
    assertThat(Texts.plain(80)).isEqualTo("80");
    assertThat(Texts.fixed(0.0123, 3)).isEqualTo("0,012");
    assertThat(Texts.date("read.date", EVENING)).isEqualTo("7. März 2026, 19:05");
    assertThat(Texts.date("open.date", EVENING)).isEqualTo("7.3.2026");
    assertThat(Texts.within("Tempo")).isEqualTo("Tempo");
    assertThat(Texts.of("place.reading")).isEqualTo("Lesen");
    assertThat(Wording.of("advice.next", "Spiel")).isEqualTo("Als Nächstes: Spiel.");
    Texts.speak(Language.ENGLISH);
    assertThat(Wording.of("advice.next", "play")).isEqualTo("Next: play.");
  }

  /** Whatever the machine speaks. */
  @Test
  void englishStaysEnglishOnAGermanMachine() {
    Locale before = Locale.getDefault();
    Locale.setDefault(Locale.GERMANY);
    try {
      Texts.speak(Language.ENGLISH);
      assertThat(Texts.of("place.reading")).isEqualTo("Read");
      assertThat(Texts.plain(132.5)).isEqualTo("132.5");
      assertThat(Texts.date("read.date", EVENING)).isEqualTo("7 March 2026, 19:05");
      assertThat(Texts.date("open.date", EVENING)).isEqualTo("2026-03-07");
      assertThat(Texts.within("Tempo")).isEqualTo("tempo");
    } finally {
      Locale.setDefault(before);
    }
  }
}
