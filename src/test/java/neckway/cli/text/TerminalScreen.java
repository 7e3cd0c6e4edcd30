package neckway.cli.text;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What stands on a terminal after text with the few control sequences of ECMA-48 that are used
 * here: line feed with return, as a terminal's driver makes it, carriage return, cursor up (CUU),
 * erase to the end of the line (EL), faint and plain (SGR 2 and 0). Anything else is refused, and
 * so is a move beyond the top of a screen of 24 lines or a line longer than its columns, 80 where
 * nothing is said of them.
 */
final class TerminalScreen {
  static final int ROWS = 24;
  static final int COLUMNS = 80;

  private static final Pattern CONTROL = Pattern.compile("\u001b\\[(\\d*)([A-Za-z])");
  private static final char FAINT_CELL = '\u00b7';

  private final List<StringBuilder> rows = new ArrayList<>(List.of(new StringBuilder()));
  private final List<StringBuilder> faint = new ArrayList<>(List.of(new StringBuilder()));
  private int row;
  private int column;
  private boolean isFaint;
  private final int columns;

  private TerminalScreen(int columns) {
    this.columns = columns;
  }

  static TerminalScreen showing(String text) {
    return showing(text, COLUMNS);
  }

  /**
   * @param columns of the screen
   */
  static TerminalScreen showing(String text, int columns) {
    TerminalScreen screen = new TerminalScreen(columns);
    Matcher control = CONTROL.matcher(text);
    int at = 0;
    while (at < text.length()) {
      if (control.region(at, text.length()).lookingAt()) {
        screen.obey(control.group(2).charAt(0), control.group(1));
        at = control.end();
      } else {
        screen.take(text.charAt(at++));
      }
    }
    return screen;
  }

  private void obey(char what, String number) {
    switch (what) {
      case 'A' -> up(Integer.parseInt(number));
      case 'K' -> {
        rows.get(row).setLength(Math.min(column, rows.get(row).length()));
        faint.get(row).setLength(Math.min(column, faint.get(row).length()));
      }
      case 'm' -> isFaint = attribute(number);
      default -> throw new AssertionError("no terminal is asked for " + number + what + " here");
    }
  }

  private void up(int lines) {
    row -= lines;
    if (row < Math.max(0, rows.size() - ROWS)) {
      throw new AssertionError(lines + " up is beyond the top of the screen");
    }
  }

  private static boolean attribute(String number) {
    return switch (number) {
      case "0" -> false;
      case "2" -> true;
      default -> throw new AssertionError("no letters are asked for like " + number + " here");
    };
  }

  private void take(char c) {
    if (c == '\n') {
      column = 0;
      row++;
      if (row == rows.size()) {
        rows.add(new StringBuilder());
        faint.add(new StringBuilder());
      }
    } else if (c == '\r') {
      column = 0;
    } else if (c < ' ') {
      throw new AssertionError("a terminal is given the control character " + (int) c);
    } else {
      put(rows.get(row), c);
      put(faint.get(row), isFaint ? FAINT_CELL : ' ');
      column++;
      if (column > columns) {
        throw new AssertionError("line " + row + " is too long: " + rows.get(row));
      }
    }
  }

  private void put(StringBuilder line, char c) {
    while (line.length() <= column) {
      line.append(' ');
    }
    line.setCharAt(column, c);
  }

  /** All that stands there, without spaces at the ends of lines and empty lines at the end. */
  String text() {
    return stripped(rows);
  }

  /** The same with a dot where a character is faint and nothing elsewhere. */
  String faintness() {
    return stripped(faint);
  }

  private static String stripped(List<StringBuilder> lines) {
    StringBuilder all = new StringBuilder();
    lines.forEach(line -> all.append(line.toString().stripTrailing()).append('\n'));
    return all.toString().stripTrailing();
  }
}
