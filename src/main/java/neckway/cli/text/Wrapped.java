package neckway.cli.text;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;

/** Prose in lines of a terminal's width. */
public final class Wrapped {
  private static final String INDENT = "  ";

  private Wrapped() {}

  /** Prints prose as wide as the terminal, its further lines set in by two columns. */
  public static void print(PrintWriter out, String prose) {
    proseLines(prose, TerminalWidth.columns()).forEach(out::println);
  }

  /**
   * Prints prose as wide as the terminal beside what is before its first line.
   *
   * @param before the first line's beginning; the further lines are set in as far
   */
  public static void beside(PrintWriter out, String before, String prose) {
    List<String> lines = lines(prose, TerminalWidth.columns() - before.length());
    for (int i = 0; i < lines.size(); i++) {
      out.println((i == 0 ? before : " ".repeat(before.length())) + lines.get(i));
    }
  }

  /** Breaks prose into lines no longer than so many columns, the further ones set in by two. */
  static List<String> proseLines(String prose, int columns) {
    return lines(prose, columns, INDENT);
  }

  /** Breaks a text into lines no longer than so many columns. */
  static List<String> lines(String text, int columns) {
    return lines(text, columns, "");
  }

  private static List<String> lines(String text, int columns, String indent) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    String before = "";
    for (String word : text.split(" ")) {
      if (!line.isEmpty() && line.length() + before.length() + word.length() > columns) {
        lines.add(line.toString());
        line = new StringBuilder(indent);
        before = "";
      }
      line.append(before).append(word);
      before = line.isEmpty() ? "" : " ";
    }
    lines.add(line.toString());
    return lines;
  }

  /** A text with spaces up to so many columns. */
  static String padded(String text, int columns) {
    return text + " ".repeat(Math.max(0, columns - text.length()));
  }
}
