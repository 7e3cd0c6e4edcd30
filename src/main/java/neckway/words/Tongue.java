package neckway.words;

import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/** The languages in which sentences are said. */
public enum Tongue {
  ENGLISH(Locale.ROOT),
  GERMAN(Locale.GERMAN);

  /** Where a sentence stands whose key begins with none of {@link #OWN_BUNDLE}. */
  private static final String USUAL_BUNDLE = "sentences";

  /** Beginnings of keys that have a bundle of that name; it is read when first asked for. */
  private static final Set<String> OWN_BUNDLE =
      Set.of("music", "files", "machine", "options", "terminal");

  private final Locale locale;
  private final Map<String, ResourceBundle> bundles = new ConcurrentHashMap<>();

  Tongue(Locale locale) {
    this.locale = locale;
  }

  /** The language of a machine; English where it speaks none of these. */
  public static Tongue of(Locale machine) {
    return Arrays.stream(values())
        .filter(tongue -> tongue.locale.getLanguage().equals(machine.getLanguage()))
        .findAny()
        .orElse(ENGLISH);
  }

  /** How numbers are written. */
  public Locale locale() {
    return locale;
  }

  /**
   * A sentence, or a part of one, as it stands in its bundle.
   *
   * @throws java.util.MissingResourceException if there is no such
   */
  String template(String key) {
    int dot = key.indexOf('.');
    String beginning = dot < 0 ? key : key.substring(0, dot);
    String name = OWN_BUNDLE.contains(beginning) ? beginning : USUAL_BUNDLE;
    return bundles.computeIfAbsent(name, this::read).getString(key);
  }

  private ResourceBundle read(String name) {
    return ResourceBundle.getBundle(
        "neckway.words." + name,
        locale,
        ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
  }
}
