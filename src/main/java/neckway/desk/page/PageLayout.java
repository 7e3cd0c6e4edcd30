package neckway.desk.page;

import java.util.List;
import java.util.stream.IntStream;
import neckway.page.PageModel;

/**
 * Where things lie on a page of some size: bars in lines, lines on sheets. A last note that would
 * have a line of its own stands at the end of the line before. All lengths in pixels.
 *
 * @param font height of a figure
 * @param column width of a step
 * @param barsPerLine whole bars side by side
 * @param across lines side by side: one, or two where there is room for one line only
 * @param room width for a line with the blank at its sides
 * @param linesPerSheet lines that fit on a sheet
 * @param lines lines in all
 * @param ruled whether each line has its ruler with the figures of time
 * @param lead columns of the first bar that are blank, since the first step comes later
 */
record PageLayout(
    double font,
    double column,
    int barsPerLine,
    int across,
    double room,
    int linesPerSheet,
    int lines,
    int strings,
    boolean ruled,
    int lead) {
  /** Blank at each side, in figures' heights. */
  private static final double MARGIN = 1.0;

  /** From string to string. */
  private static final double STRING_GAP = 0.82;

  /** Above the highest string: the hand and the arc. */
  private static final double ABOVE = 1.88;

  /** From the lowest string to the ruler. */
  private static final double TO_RULER = 1.35;

  /** Under the ruler: the figures of time. */
  private static final double BELOW = 1.75;

  /** Under the lowest string where there is no ruler. */
  private static final double UNRULED = 0.66;

  private static final double LEAST_COLUMN = 1.75;
  private static final double MOST_COLUMN = 3.2;
  private static final double SMALLEST_FONT = 9;
  private static final double MOST_LARGER = 1.9;

  /** Rather than turn sheets, figures are made smaller than wanted by as much as this. */
  private static final double SMALLER = 0.7;

  /**
   * The whole page as large as it fits, in as many lines as that takes. One that would be much
   * smaller than wanted goes on over several sheets. There is a ruler where marks are shown.
   *
   * @param wantedFont height of a figure; smaller only where not even one bar fits
   */
  static PageLayout of(double width, double height, double wantedFont, PageModel page) {
    double lineHeight = lineHeight(page.strings(), page.marks() == PageModel.Marks.SHOWN);
    int perLine = 1;
    double font = 0;
    for (int tried = 1; tried <= bars(page); tried++) {
      int lines = lines(page, tried);
      double fits =
          Math.min(widest(width, columns(page, tried)), tallest(height, lines, lineHeight));
      if (fits > font) {
        font = fits;
        perLine = tried;
      }
    }
    if (font < SMALLER * wantedFont) {
      int onSheet = Math.max(1, (int) (height / (SMALLER * wantedFont * lineHeight)));
      double room = Math.min(widest(width, columns(page, 1)), tallest(height, onSheet, lineHeight));
      font = Math.max(SMALLEST_FONT, Math.min(wantedFont, room));
      perLine = 1;
      while (perLine < bars(page) && widest(width, columns(page, perLine + 1)) >= font) {
        perLine++;
      }
    }
    font = Math.min(font, MOST_LARGER * wantedFont);
    double room = (width - 2 * MARGIN * font) / columns(page, perLine);
    double column = Math.min(MOST_COLUMN * font, room);
    int lines = lines(page, perLine);
    int linesPerSheet = Math.max(1, (int) (height / (font * lineHeight) + 1e-6));
    boolean ruled = page.marks() == PageModel.Marks.SHOWN;
    return new PageLayout(
        font, column, perLine, 1, width, linesPerSheet, lines, page.strings(), ruled, page.lead());
  }

  /**
   * The same for a page that is played from. Where it goes on over several sheets at least two
   * lines are in sight, one under the other or side by side, whichever is larger. So the line after
   * the one that is played can always be read.
   */
  static PageLayout inTurn(double width, double height, double wantedFont, PageModel page) {
    PageLayout whole = of(width, height, wantedFont, page);
    if (whole.sheets() == 1 || whole.linesPerSheet() > 1) {
      return whole;
    }
    double lineHeight = lineHeight(page.strings(), whole.ruled());
    double under = Math.min(widest(width, columns(page, 1)), tallest(height, 2, lineHeight));
    double beside = Math.min(widest(width / 2, columns(page, 1)), tallest(height, 1, lineHeight));
    double font = Math.max(SMALLEST_FONT, Math.min(wantedFont, Math.max(under, beside)));
    int across = beside > under ? 2 : 1;
    double room = width / across;
    int perLine = 1;
    while (across == 1
        && perLine < bars(page)
        && widest(width, columns(page, perLine + 1)) >= font) {
      perLine++;
    }
    double column =
        Math.min(MOST_COLUMN * font, (room - 2 * MARGIN * font) / columns(page, perLine));
    int lines = lines(page, perLine);
    return new PageLayout(
        font, column, perLine, across, room, 2, lines, page.strings(), whole.ruled(), page.lead());
  }

  /** Columns that the steps take with the blank before the first one. */
  private static int taken(PageModel page) {
    return page.lead() + page.steps();
  }

  private static int bars(PageModel page) {
    return (taken(page) + page.barSteps() - 1) / page.barSteps();
  }

  /** Whether the last note would have a line of its own, as many bars side by side. */
  private static boolean lastAlone(PageModel page, int barsPerLine) {
    int onLine = barsPerLine * page.barSteps();
    return taken(page) > onLine && taken(page) % onLine == 1;
  }

  private static int lines(PageModel page, int barsPerLine) {
    int lines = (bars(page) + barsPerLine - 1) / barsPerLine;
    return lastAlone(page, barsPerLine) ? lines - 1 : lines;
  }

  /** Columns that the longest line needs. */
  private static int columns(PageModel page, int barsPerLine) {
    return barsPerLine * page.barSteps() + (lastAlone(page, barsPerLine) ? 1 : 0);
  }

  private static double widest(double width, int columns) {
    return width / (LEAST_COLUMN * columns + 2 * MARGIN);
  }

  private static double tallest(double height, int lines, double lineHeight) {
    return height / (lines * lineHeight);
  }

  /** From line to line, in figures' heights. */
  private static double lineHeight(int strings, boolean ruled) {
    return ABOVE + STRING_GAP * (strings - 1) + (ruled ? TO_RULER + BELOW : UNRULED);
  }

  double lineHeight() {
    return font * lineHeight(strings, ruled);
  }

  /** Blank at each side of a line. */
  double margin() {
    return MARGIN * font;
  }

  /** Where a line begins. */
  double left(int line) {
    return margin() + line % linesPerSheet % across * room;
  }

  double stringGap() {
    return STRING_GAP * font;
  }

  int line(int step, int barSteps) {
    return Math.min(lines - 1, (lead + step) / (barSteps * barsPerLine));
  }

  /** The first step of a line. */
  int from(int line, int barSteps) {
    return Math.max(0, line * barSteps * barsPerLine - lead);
  }

  /** The step after the last one of a line. */
  int to(int line, PageModel page) {
    return line == lines - 1 ? page.steps() : from(line + 1, page.barSteps());
  }

  /** Columns of a line: whole bars, or up to a last note that goes with it. */
  int columns(int line, PageModel page) {
    int whole = barsPerLine * page.barSteps();
    int notes = blank(line) + to(line, page) - from(line, page.barSteps());
    int bars = (notes + page.barSteps() - 1) / page.barSteps();
    return notes > whole ? notes : bars * page.barSteps();
  }

  /** Columns of a line that are blank before its first step. */
  private int blank(int line) {
    return line == 0 ? lead : 0;
  }

  /** The step that would stand in the column after the last one of a line. */
  int end(int line, PageModel page) {
    return from(line, page.barSteps()) + columns(line, page) - blank(line);
  }

  /** Middle of a step's column. */
  double x(int step, int barSteps) {
    int line = line(step, barSteps);
    return left(line) + (blank(line) + step - from(line, barSteps) + 0.5) * column;
  }

  /** The highest string of a line on its sheet. */
  double top(int line) {
    return (line % linesPerSheet) / across * lineHeight() + ABOVE * font;
  }

  double bottom(int line) {
    return top(line) + (strings - 1) * stringGap();
  }

  double ruler(int line) {
    return bottom(line) + TO_RULER * font;
  }

  int sheet(int line) {
    return line / linesPerSheet;
  }

  /** The lines of a sheet. */
  List<Integer> onSheet(int sheet) {
    int from = sheet * linesPerSheet;
    return IntStream.range(from, Math.min(lines, from + linesPerSheet)).boxed().toList();
  }

  /**
   * The lines in sight while one is played: the line before it where there is room for three, it
   * and those after it. Each keeps its place on the sheet, so that a new line takes the place of
   * one that was played, and none moves.
   */
  List<Integer> inSight(int line) {
    int before = linesPerSheet > 2 ? 1 : 0;
    int from = Math.max(0, Math.min(line - before, lines - linesPerSheet));
    return IntStream.range(from, Math.min(lines, from + linesPerSheet)).boxed().toList();
  }

  int sheets() {
    return (lines + linesPerSheet - 1) / linesPerSheet;
  }

  /** The step at a point of a sheet, or the nearest one to it. */
  int stepAt(double x, double y, int sheet, int barSteps, int steps) {
    int row = (int) Math.max(0, Math.min(linesPerSheet / across - 1, y / lineHeight()));
    int beside = (int) Math.max(0, Math.min(across - 1, x / room));
    int line = Math.min(lines - 1, sheet * linesPerSheet + row * across + beside);
    int from = from(line, barSteps);
    int most = (line == lines - 1 ? steps : from(line + 1, barSteps)) - 1;
    int across = (int) Math.max(0, (x - left(line)) / column) - blank(line);
    return Math.max(from, Math.min(most, from + across));
  }
}
