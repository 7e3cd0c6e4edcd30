package neckway.cli.text;

import java.util.ArrayList;
import java.util.List;

/** Small helps for text on the terminal. */
final class Words {
  /** Characters in a line. */
  static final int WIDTH = 80;

  private Words() {}

  /** Breaks a text into lines no longer than a width. */
  static List<String> wrapped(String text, int width) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : text.split(" ")) {
      if (!line.isEmpty() && line.length() + 1 + word.length() > width) {
        lines.add(line.toString());
        line.setLength(0);
      }
      line.append(line.isEmpty() ? "" : " ").append(word);
    }
    lines.add(line.toString());
    return lines;
  }

  /** A text with spaces up to a width. */
  static String padded(String text, int width) {
    return text + " ".repeat(Math.max(0, width - text.length()));
  }
}
