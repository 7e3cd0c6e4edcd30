package neckway.cli.text;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.IntFunction;
import neckway.drill.PlayableDrill;
import neckway.neck.GuitarString;

/**
 * Lays a page out as tab: bars in lines, a row a string, the highest-sounding on top, and rows of
 * text under or over them in the same columns.
 */
final class Tab {
  private static final int MARGIN = 6;

  private final PlayableDrill drill;
  private final int cell;
  private final int bar;

  /**
   * @param cell characters a step
   */
  Tab(PlayableDrill drill, int cell) {
    this.drill = drill;
    this.cell = cell;
    bar = drill.pulse().notesPerBeat() * drill.pulse().beatsPerBar();
  }

  /** Steps in a bar. */
  int bar() {
    return bar;
  }

  /** Steps that fit in a line without breaking a bar that fits. */
  int stepsInBar() {
    return Math.min(bar, (Wrapped.COLUMNS - MARGIN) / cell - 1);
  }

  /** As many whole bars as fit, or what fits of one. */
  int stepsPerLine() {
    int most = (Wrapped.COLUMNS - MARGIN) / cell;
    return stepsInBar() * Math.max(1, most / (bar + 1));
  }

  /** Strings as tab has them: the highest-sounding on top. */
  List<GuitarString> highestFirst() {
    List<GuitarString> strings = new ArrayList<>(drill.tuning().strings());
    Collections.reverse(strings);
    return strings;
  }

  /** A string's row: what is played on it, in its place. */
  String row(GuitarString string, int from, int to, IntFunction<Cell> text) {
    StringBuilder row = new StringBuilder(margin(name(string)));
    for (int s = from; s < to; s++) {
      boolean here = drill.route().steps().get(s).place().string().equals(string);
      Cell shown = here ? text.apply(s) : Cell.of("");
      row.append(s % bar == 0 ? "|" : "").append(padded(shown, '-'));
    }
    return row.append('|').toString();
  }

  /** A row of text in the columns of the steps. */
  String row(String name, int from, int to, IntFunction<String> text) {
    StringBuilder row = new StringBuilder(margin(name));
    for (int s = from; s < to; s++) {
      row.append(s % bar == 0 ? " " : "").append(padded(Cell.of(text.apply(s)), ' '));
    }
    return row.toString();
  }

  /**
   * What stands in a cell, at its right edge.
   *
   * @param before control characters that change how it is drawn, not read
   * @param text what is read
   * @param after control characters that change it back
   */
  record Cell(String before, String text, String after) {
    static Cell of(String text) {
      return new Cell("", text, "");
    }
  }

  private String padded(Cell shown, char fill) {
    return String.valueOf(fill).repeat(Math.max(0, cell - shown.text().length()))
        + shown.before()
        + shown.text()
        + shown.after();
  }

  private String name(GuitarString string) {
    return drill.key().spell(drill.tuning().openMidi(string)).note();
  }

  private static String margin(String name) {
    return String.format("%" + (MARGIN - 1) + "s ", name);
  }
}
