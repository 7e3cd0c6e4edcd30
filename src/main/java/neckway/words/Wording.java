package neckway.words;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Sentences from the bundle of a language. English, whatever the machine speaks, until {@link
 * #speak} says otherwise.
 */
public final class Wording {
  /** Numbers up to this one are written in words. */
  private static final int LAST_IN_WORDS = 12;

  /** Strings, fingers and tries up to this one are counted in words. */
  private static final int LAST_ORDINAL = 8;

  private static final Pattern PLACE = Pattern.compile("\\{(\\d)}");

  private static volatile Tongue usual = Tongue.ENGLISH;

  /** Set only within {@link #in}. */
  private static final ThreadLocal<Tongue> HERE = new ThreadLocal<>();

  private Wording() {}

  /** Says all sentences from now on in a language; what was said already stays as it is. */
  public static void speak(Tongue tongue) {
    usual = tongue;
  }

  /** Says something in a language, in this thread alone, whatever is spoken otherwise. */
  public static <T> T in(Tongue tongue, Supplier<T> something) {
    Tongue before = HERE.get();
    HERE.set(tongue);
    try {
      return something.get();
    } finally {
      if (before == null) {
        HERE.remove();
      } else {
        HERE.set(before);
      }
    }
  }

  /** The language that is spoken here and now. */
  public static Tongue tongue() {
    return Optional.ofNullable(HERE.get()).orElse(usual);
  }

  /**
   * A text with {0}, {1} … replaced.
   *
   * @throws java.util.MissingResourceException if the bundle has no such text
   */
  public static String of(String key, Object... values) {
    return filled(tongue().template(key), values);
  }

  /** A text with {0}, {1} … replaced; what stands in a value stays as it is. */
  public static String filled(String text, Object... values) {
    return PLACE
        .matcher(text)
        .replaceAll(
            place -> {
              int number = Integer.parseInt(place.group(1));
              String value =
                  number < values.length ? String.valueOf(values[number]) : place.group();
              return Matcher.quoteReplacement(value);
            });
  }

  /** One text for a single thing, another for none or several: the key ends in .one or .many. */
  public static String counted(String key, int count, Object... values) {
    return of(key + (count == 1 ? ".one" : ".many"), values);
  }

  /** A whole number, in a word up to twelve. */
  public static String number(int number) {
    return number <= LAST_IN_WORDS ? of("number." + number) : Integer.toString(number);
  }

  /** "once", "twice", "three times". */
  public static String times(int number) {
    if (number == 1 || number == 2) {
      return of("times." + number);
    }
    return of(number <= LAST_IN_WORDS ? "times.words" : "times.figures", number(number));
  }

  /** "first", "second"; in figures from the ninth on. */
  public static String ordinal(int number) {
    return isOrdinalInWords(number)
        ? of("ordinal." + number)
        : of("ordinal.figures", Integer.toString(number));
  }

  /** Whether an ordinal is a word, to which an ending can be put. */
  public static boolean isOrdinalInWords(int number) {
    return number <= LAST_ORDINAL;
  }

  /** A number with as many decimals as it has. */
  public static String plain(double number) {
    return Double.toString(number).replace(".", of("number.point"));
  }

  /** A number with so many decimals. */
  public static String fixed(double number, int decimals) {
    return String.format(tongue().locale(), "%." + decimals + "f", number);
  }

  /** "A", "A and B", "A, B and C". */
  public static String list(List<String> things) {
    if (things.size() < 2) {
      return String.join("", things);
    }
    int last = things.size() - 1;
    return of("list", String.join(", ", things.subList(0, last)), things.get(last));
  }

  /** With a capital letter. */
  public static String capital(String words) {
    return Character.toUpperCase(words.charAt(0)) + words.substring(1);
  }

  /** Whether a sentence begins as a text does before its first {0}, in any language. */
  public static boolean begins(String sentence, String key) {
    for (Tongue tongue : Tongue.values()) {
      if (sentence.startsWith(tongue.template(key).replaceFirst("\\{0}.*", ""))) {
        return true;
      }
    }
    return false;
  }
}
