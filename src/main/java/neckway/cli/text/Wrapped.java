package neckway.cli.text;

import java.io.PrintWriter;

/** Prose in lines of a terminal's width. */
public final class Wrapped {
  public static final int COLUMNS = 80;

  private Wrapped() {}

  public static void print(PrintWriter out, String prose) {
    StringBuilder line = new StringBuilder();
    for (String word : prose.split(" ")) {
      if (line.length() > 0 && line.length() + 1 + word.length() > COLUMNS) {
        out.println(line);
        line.setLength(0);
        line.append("  ");
      } else if (line.length() > 0) {
        line.append(' ');
      }
      line.append(word);
    }
    out.println(line);
  }
}
