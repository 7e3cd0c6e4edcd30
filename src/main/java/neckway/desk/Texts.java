package neckway.desk;

import java.util.Locale;
import java.util.ResourceBundle;

/** Every word in the window, from one bundle. */
public final class Texts {
  private static final ResourceBundle BUNDLE =
      ResourceBundle.getBundle("neckway.desk.texts", Locale.ROOT);

  private Texts() {}

  /**
   * A text with {0}, {1} … replaced.
   *
   * @throws java.util.MissingResourceException if the bundle has no such text
   */
  public static String of(String key, Object... values) {
    String text = BUNDLE.getString(key);
    for (int i = 0; i < values.length; i++) {
      text = text.replace("{" + i + "}", String.valueOf(values[i]));
    }
    return text;
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
    return number == Math.rint(number)
        ? Long.toString((long) number)
        : String.format(Locale.ROOT, "%.1f", number);
  }
}
