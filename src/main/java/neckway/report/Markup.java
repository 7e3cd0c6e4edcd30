package neckway.report;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Locale;

/**
 * Writes elements, and escapes all text in them. What comes of it is well-formed XML as well as
 * HTML. For one thread.
 */
final class Markup {
  private final StringBuilder written = new StringBuilder();
  private final Deque<String> open = new ArrayDeque<>();

  /** What is known from here on to be well-formed and escaped: the head of the page. */
  Markup raw(String text) {
    written.append(text);
    return this;
  }

  /**
   * Opens an element.
   *
   * @param attributes name, value, name, value
   */
  Markup open(String name, String... attributes) {
    tag(name, attributes).append('>');
    open.push(name);
    return this;
  }

  /** Closes the element opened last. */
  Markup close() {
    written.append("</").append(open.pop()).append('>');
    return this;
  }

  /** An element with nothing in it. */
  Markup empty(String name, String... attributes) {
    tag(name, attributes).append("/>");
    return this;
  }

  /** An element with text in it. */
  Markup element(String name, String text, String... attributes) {
    return open(name, attributes).text(text).close();
  }

  /** Text. */
  Markup text(String text) {
    written.append(escaped(text));
    return this;
  }

  private StringBuilder tag(String name, String... attributes) {
    written.append(open.isEmpty() || !name.equals("text") ? "\n<" : "<").append(name);
    for (int i = 0; i < attributes.length; i += 2) {
      written.append(' ').append(attributes[i]).append("=\"").append(escaped(attributes[i + 1]));
      written.append('"');
    }
    return written;
  }

  /** A length in a picture. */
  static String length(double units) {
    return String.format(Locale.ROOT, "%.1f", units);
  }

  /** The text with nothing in it that could be taken for markup, or that XML 1.0 forbids. */
  static String escaped(String text) {
    StringBuilder escaped = new StringBuilder(text.length());
    text.codePoints()
        .forEach(
            c -> {
              switch (c) {
                case '<' -> escaped.append("&lt;");
                case '>' -> escaped.append("&gt;");
                case '&' -> escaped.append("&amp;");
                case '"' -> escaped.append("&quot;");
                case '\'' -> escaped.append("&#39;");
                default -> escaped.appendCodePoint(isAllowed(c) ? c : '\uFFFD');
              }
            });
    return escaped.toString();
  }

  /** The characters of XML 1.0, section 2.2. */
  private static boolean isAllowed(int c) {
    return c == '\t'
        || c == '\n'
        || c == '\r'
        || c >= 0x20 && c <= 0xD7FF
        || c >= 0xE000 && c <= 0xFFFD
        || c >= 0x10000;
  }

  @Override
  public String toString() {
    if (!open.isEmpty()) {
      throw new IllegalStateException("still open: " + open);
    }
    return written.toString();
  }
}
