package neckway.desk;

import java.time.format.DateTimeFormatter;
import java.time.temporal.TemporalAccessor;
import java.util.Locale;
import java.util.ResourceBundle;
import neckway.words.Wording;

/**
 * Every word in the window, from one bundle for each language. English, until {@link #speak} says
 * otherwise.
 */
public final class Texts {
  /** A language and its words, changed together. */
  private record Speech(Language language, ResourceBundle bundle) {
    static Speech in(Language language) {
      Locale of = language == Language.ENGLISH ? Locale.ROOT : language.locale();
      ResourceBundle.Control noOther =
          ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES);
      return new Speech(language, ResourceBundle.getBundle("neckway.desk.texts", of, noOther));
    }
  }

  private static volatile Speech speech = Speech.in(Language.ENGLISH);

  private Texts() {}

  /**
   * Takes all words from now on in a language, those of a review and of a plan too; what is shown
   * already stays as it is.
   */
  public static void speak(Language language) {
    speech = Speech.in(language);
    Wording.speak(language.tongue());
  }

  /** The language of the words. */
  static Language language() {
    return speech.language();
  }

  /**
   * A text with {0}, {1} … replaced.
   *
   * @throws java.util.MissingResourceException if the bundle has no such text
   */
  public static String of(String key, Object... values) {
    return Wording.filled(speech.bundle().getString(key), values);
  }

  /** A number in words up to ten, in figures beyond. */
  public static String number(int number) {
    return number >= 1 && number <= 10 ? of("number." + number) : Integer.toString(number);
  }

  /** A finger or a string counted: first, second … up to eighth. */
  public static String ordinal(int number) {
    return of("ordinal." + number);
  }

  /** A number without a fraction that is not there. */
  public static String plain(double number) {
    return number == Math.rint(number) ? Long.toString((long) number) : fixed(number, 1);
  }

  /** A number with so many decimals. */
  public static String fixed(double number, int decimals) {
    return String.format(speech.language().locale(), "%." + decimals + "f", number);
  }

  /** A day or a time, written as the pattern of a text says. */
  public static String date(String patternKey, TemporalAccessor when) {
    return DateTimeFormatter.ofPattern(of(patternKey), speech.language().locale()).format(when);
  }

  /** A name as it stands within a sentence. */
  public static String within(String name) {
    return speech.language().within(name);
  }
}
