package neckway.cli.text;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import neckway.drill.PlayableDrill;
import neckway.neck.GuitarString;
import neckway.page.PageStep;

/**
 * Lays a page out as tab: bars in lines, a row a string, the highest-sounding on top, and rows of
 * text under or over them in the same columns. A bar that is too long for the terminal is shared
 * out over several lines, and the last note never has a line of its own.
 */
final class Tab {
  private static final int MARGIN = 6;
  private static final String BAR = "|";

  /** How many bars stand side by side. */
  enum Bars {
    /** One, as it is played. */
    ONE,
    /** As many as the terminal has room for. */
    ALL_THAT_FIT
  }

  /**
   * A line of tab.
   *
   * @param from its first step
   * @param to the step after its last one
   */
  record Line(int from, int to) {
    int notes() {
      return to - from;
    }
  }

  private final PlayableDrill drill;
  private final int cell;
  private final int width;
  private final int bar;
  private final List<Line> lines;

  /**
   * @param cell characters a step
   * @param width columns there are, 40 or more
   */
  Tab(PlayableDrill drill, int cell, int width, Bars bars) {
    this.drill = drill;
    this.cell = cell;
    this.width = width;
    bar = drill.pulse().notesPerBeat() * drill.pulse().beatsPerBar();
    lines = withCompany(fits(bars(1)) ? wholeBars(bars) : sharedBars());
  }

  /** Steps in a bar. */
  int bar() {
    return bar;
  }

  /** The lines from the first step to the last. */
  List<Line> lines() {
    return lines;
  }

  /** Index of the line that a step stands in. */
  int lineOf(int step) {
    return IntStream.range(0, lines.size())
        .filter(line -> step < lines.get(line).to())
        .findFirst()
        .orElseThrow();
  }

  /** Columns of the longest line. */
  int longestLine() {
    return lines.stream().mapToInt(this::columns).max().orElseThrow();
  }

  private int steps() {
    return drill.route().steps().size();
  }

  private int columns(Line line) {
    int bars = (int) IntStream.range(line.from(), line.to()).filter(this::beginsBar).count();
    return MARGIN + line.notes() * cell + bars * BAR.length() + BAR.length();
  }

  private boolean beginsBar(int step) {
    return step % bar == 0;
  }

  private boolean endsBar(Line line) {
    return beginsBar(line.to()) || line.to() == steps();
  }

  private boolean fits(Line line) {
    return columns(line) <= width;
  }

  private Line bars(int count) {
    return new Line(0, count * bar);
  }

  private List<Line> wholeBars(Bars bars) {
    int each = 1;
    while (bars == Bars.ALL_THAT_FIT && each * bar < steps() && fits(bars(each + 1))) {
      each++;
    }
    List<Line> whole = new ArrayList<>();
    for (int from = 0; from < steps(); from += each * bar) {
      whole.add(new Line(from, Math.min(steps(), from + each * bar)));
    }
    return whole;
  }

  private List<Line> sharedBars() {
    int most = (width - MARGIN - 2 * BAR.length()) / cell;
    int parts = (bar + most - 1) / most;
    List<Line> shared = new ArrayList<>();
    for (int start = 0; start < steps(); start += bar) {
      for (int part = 0; part < parts; part++) {
        int from = start + bar * part / parts;
        int to = Math.min(steps(), start + bar * (part + 1) / parts);
        if (from < to) {
          shared.add(new Line(from, to));
        }
      }
    }
    return shared;
  }

  /** A last note that would stand alone goes on the line before, or takes half of that with it. */
  private List<Line> withCompany(List<Line> all) {
    int last = all.size() - 1;
    if (last < 1 || all.get(last).notes() > 1) {
      return all;
    }
    Line two = new Line(all.get(last - 1).from(), all.get(last).to());
    List<Line> shared = new ArrayList<>(all.subList(0, last - 1));
    if (fits(two)) {
      shared.add(two);
    } else {
      int middle = two.from() + (two.notes() + 1) / 2;
      shared.add(new Line(two.from(), middle));
      shared.add(new Line(middle, two.to()));
    }
    return shared;
  }

  /** Strings as tab has them: the highest-sounding on top. */
  List<GuitarString> highestFirst() {
    List<GuitarString> strings = new ArrayList<>(drill.tuning().strings());
    Collections.reverse(strings);
    return strings;
  }

  /** A string's row: what stands on it, in its place. */
  String row(GuitarString string, Line line, IntFunction<Cell> text) {
    StringBuilder row = new StringBuilder(margin(name(string)));
    for (int s = line.from(); s < line.to(); s++) {
      row.append(beginsBar(s) ? BAR : "").append(padded(text.apply(s), '-'));
    }
    return row.append(endsBar(line) ? BAR : "-").toString();
  }

  /** A row of text in the columns of the steps. */
  String row(String name, Line line, IntFunction<String> text) {
    StringBuilder row = new StringBuilder(margin(name));
    for (int s = line.from(); s < line.to(); s++) {
      row.append(beginsBar(s) ? " " : "").append(padded(Cell.of(text.apply(s)), ' '));
    }
    return row.toString();
  }

  /** What stands on a string at a step: the note, the place planned for it, or nothing. */
  static String sign(PageStep step, GuitarString string) {
    if (step.played().place().string().equals(string)) {
      return step.sign();
    }
    return step.due().place().string().equals(string) ? step.plannedSign() : "";
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
    return drill.tuning().lowToHigh().get(drill.tuning().count() - string.number()).note();
  }

  private static String margin(String name) {
    return String.format("%" + (MARGIN - 1) + "s ", name);
  }
}
