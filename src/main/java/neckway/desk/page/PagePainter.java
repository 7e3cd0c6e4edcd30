package neckway.desk.page;

import java.util.Optional;
import javafx.geometry.VPos;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.text.Font;
import javafx.scene.text.FontWeight;
import javafx.scene.text.TextAlignment;
import neckway.hand.ShiftVerdict;
import neckway.page.PageModel;
import neckway.page.PageModel.Ink;

/** Draws one sheet of a page. Right, wrong, left out and struck twice differ by their form. */
final class PagePainter {
  private static final double DIGIT = 0.62;

  private final GraphicsContext g;
  private final PageModel page;
  private final PageLayout at;
  private final Inks inks;
  private final PageWords words;
  private final Font figure;
  private final Font bold;
  private final Font heardFont;
  private final Font small;
  private final double stroke;

  /** How far each of the two rows of landings under a line is written already. */
  private double[] landedUntil = new double[2];

  PagePainter(GraphicsContext g, PageModel page, PageLayout at, Inks inks, PageWords words) {
    this.g = g;
    this.page = page;
    this.at = at;
    this.inks = inks;
    this.words = words;
    figure = Font.font("System", FontWeight.NORMAL, at.font());
    bold = Font.font("System", FontWeight.BOLD, at.font());
    heardFont = Font.font("System", FontWeight.BOLD, 0.72 * at.font());
    small = Font.font("System", FontWeight.NORMAL, Math.max(9, 0.58 * at.font()));
    stroke = Math.max(1, at.font() / 18);
  }

  void sheet(int sheet, double width, double height) {
    g.setFill(inks.paper());
    g.fillRect(0, 0, width, height);
    g.setTextBaseline(VPos.CENTER);
    g.setTextAlign(TextAlignment.CENTER);
    int bar = page.barSteps();
    for (int line = sheet * at.linesPerSheet();
        line < Math.min(at.lines(), (sheet + 1) * at.linesPerSheet());
        line++) {
      int from = line * bar * at.barsPerLine();
      int bars = Math.min(at.barsPerLine(), page.bars() - line * at.barsPerLine());
      staff(line, bars);
      int to = Math.min(page.steps(), from + bars * bar);
      for (int step = from; step < to; step++) {
        step(line, step, step == from);
      }
      landedUntil = new double[2];
      for (int step = from; step < to; step++) {
        // over the figures, which would cover them where notes stand close
        over(line, step);
      }
    }
  }

  private void staff(int line, int bars) {
    double left = at.left();
    double right = left + bars * page.barSteps() * at.column();
    g.setStroke(inks.line());
    g.setLineWidth(1);
    for (int s = 0; s < page.strings(); s++) {
      double y = crisp(at.top(line) + s * at.stringGap());
      g.strokeLine(left, y, right, y);
    }
    g.strokeLine(left, crisp(at.ruler(line)), right, crisp(at.ruler(line)));
    g.setStroke(inks.ink());
    for (int b = 0; b <= bars; b++) {
      double x = crisp(left + b * page.barSteps() * at.column());
      g.strokeLine(x, at.top(line), x, at.bottom(line));
      if (b < bars) {
        text(
            Integer.toString(line * at.barsPerLine() + b + 1),
            x,
            at.top(line) - 1.55 * at.font(),
            small,
            inks.pale(),
            TextAlignment.LEFT);
      }
    }
  }

  private void step(int line, int step, boolean firstOfLine) {
    double x = at.x(step, page.barSteps());
    double y = y(line, step);
    selection(line, step, x);
    if (firstOfLine || page.hand(step) != page.hand(step - 1)) {
      text(
          handLabel(line, step),
          x - 0.5 * at.font(),
          at.top(line) - 0.95 * at.font(),
          small,
          inks.shape(page.step(step).stand()),
          TextAlignment.LEFT);
    }
    figure(step, x, y);
    if (page.landing(step).isPresent()) {
      landing(line, step, x);
    }
    if (!page.strays(step).isEmpty()) {
      text(
          page.strays(step),
          x + at.column() / 2,
          at.bottom(line) + 0.62 * at.font(),
          small,
          inks.ink(),
          TextAlignment.CENTER);
    }
    ruler(line, step, x);
  }

  /** In full where there is room before the next one, else the fret alone. */
  private String handLabel(int line, int step) {
    int next = step + 1;
    while (next < page.steps()
        && at.line(next, page.barSteps()) == line
        && page.hand(next) == page.hand(step)) {
      next++;
    }
    String full = words.hand(page.hand(step));
    boolean last = next >= page.steps() || at.line(next, page.barSteps()) != line;
    int ofLine = at.barsPerLine() * page.barSteps();
    int columns = last ? ofLine - step % ofLine : next - step;
    double room = columns * at.column() + (last ? at.left() : 0);
    return room > DIGIT * small.getSize() * (full.length() + 1)
        ? full
        : Integer.toString(page.hand(step));
  }

  private void figure(int step, double x, double y) {
    String fret = Integer.toString(page.step(step).place().fret());
    Color hue = inks.shape(page.step(step).stand());
    Ink ink = page.ink(step);
    double wide = DIGIT * at.font() * fret.length();
    g.setFill(inks.paper());
    g.fillRect(x - wide / 2 - 2, y - 0.45 * at.font(), wide + 4, 0.9 * at.font());
    switch (ink) {
      case PALE -> text(fret, x, y, figure, inks.pale(), TextAlignment.CENTER);
      case RIGHT, UNNAMED ->
          text(
              fret,
              x,
              y,
              ink == Ink.RIGHT ? bold : figure,
              page.marks() == PageModel.Marks.HIDDEN ? inks.ink() : hue,
              TextAlignment.CENTER);
      case WRONG -> wrong(fret, x, y);
      case LEFT_OUT -> {
        text(fret, x, y, figure, inks.pale(), TextAlignment.CENTER);
        ring(x, y, wide);
      }
    }
    if (page.marks() == PageModel.Marks.SHOWN && ink == Ink.UNNAMED) {
      text("?", x + wide / 2 + 3, y - 0.4 * at.font(), small, inks.ink(), TextAlignment.LEFT);
    }
    if (page.twice(step)) {
      double by = 0.3 * at.font();
      text(fret, x + by, y + by, bold, hue, TextAlignment.CENTER);
    }
  }

  private void wrong(String fret, double x, double y) {
    double reach = 0.62 * at.font();
    text(fret, x, y, figure, inks.pale(), TextAlignment.CENTER);
    g.setStroke(inks.ink());
    g.setLineWidth(1.8 * stroke);
    g.strokeLine(x - reach, y + 0.5 * reach, x + reach, y - 0.5 * reach);
  }

  /** What was heard in place of a note, and how a landing fell. */
  private void over(int line, int step) {
    double x = at.x(step, page.barSteps());
    if (page.ink(step) == Ink.WRONG) {
      // where notes stand close, above rather than beside
      boolean close = at.column() < 2.2 * at.font();
      text(
          page.heard(step),
          x + (close ? 0.62 : 0.9) * at.font(),
          y(line, step) - (close ? 0.74 : 0.5) * at.font(),
          heardFont,
          inks.ink(),
          TextAlignment.CENTER);
    }
    if (page.timed(step)) {
      landed(line, words.landed(page, step), x);
    }
  }

  /** In the second row where it would meet the one before; left out where there is no room. */
  private void landed(int line, String said, double x) {
    double half = 0.5 * DIGIT * small.getSize() * said.length();
    for (int row = 0; row < landedUntil.length && !said.isEmpty(); row++) {
      if (x - half > landedUntil[row]) {
        double y = at.ruler(line) + (1.42 + 0.6 * row) * at.font();
        text(said, x, y, small, inks.ink(), TextAlignment.CENTER);
        landedUntil[row] = x + half;
        return;
      }
    }
  }

  private void ring(double x, double y, double wide) {
    double across = Math.max(wide, at.font()) + 0.5 * at.font();
    double tall = 1.15 * at.font();
    g.setStroke(inks.ink());
    g.setLineWidth(1.6 * stroke);
    g.setLineDashes(1.5 * stroke, 3 * stroke);
    g.strokeOval(x - across / 2, y - tall / 2, across, tall);
    g.setLineDashes();
  }

  private void landing(int line, int step, double x) {
    boolean sameLine = step > 0 && at.line(step - 1, page.barSteps()) == line;
    double fromX = sameLine ? at.x(step - 1, page.barSteps()) : x - at.column();
    double highest = sameLine ? Math.min(y(line, step - 1), y(line, step)) : y(line, step);
    double y = highest - 0.6 * at.font();
    Optional<ShiftVerdict> verdict = page.shift(step);
    g.setStroke(verdict.isPresent() ? inks.ink() : inks.pale());
    g.setLineWidth(verdict.isPresent() ? 1.8 * stroke : stroke);
    ShiftVerdict shown = verdict.orElse(ShiftVerdict.UNPLAYED);
    if (shown == ShiftVerdict.MOVED) {
      g.setLineDashes(5 * stroke, 4 * stroke);
    } else if (shown == ShiftVerdict.MISSED) {
      g.setLineDashes(1.5 * stroke, 4 * stroke);
    }
    double rise = 1.05 * at.font();
    g.beginPath();
    g.moveTo(fromX, y);
    g.bezierCurveTo(fromX, y - rise, x, y - rise, x, y);
    g.stroke();
    g.setLineDashes();
    String said = words.shift(shown, page.madeOn(step));
    if (!said.isEmpty()) {
      double middle = (fromX + x) / 2;
      text(said, middle, y - rise, small, inks.ink(), TextAlignment.CENTER);
    }
  }

  private void ruler(int line, int step, double x) {
    double y = at.ruler(line);
    g.setStroke(inks.pale());
    g.setLineWidth(stroke);
    g.strokeLine(x, y - 0.2 * at.font(), x, y + 0.2 * at.font());
    if (!page.timed(step)) {
      return;
    }
    double heardX = x + page.offSlots(step) * at.column();
    g.setStroke(inks.ink());
    g.setLineWidth(1.8 * stroke);
    if (!page.fine(step)) {
      g.setLineDashes(2 * stroke, 3 * stroke);
    }
    g.strokeLine(heardX, y - 0.42 * at.font(), heardX, y + 0.42 * at.font());
    g.setLineDashes();
    text(words.off(page, step), x, y + 0.85 * at.font(), small, inks.ink(), TextAlignment.CENTER);
  }

  private void selection(int line, int step, double x) {
    if (page.selected().filter(s -> s == step).isEmpty()) {
      return;
    }
    g.setStroke(inks.accent());
    g.setLineWidth(1.5 * stroke);
    double top = at.top(line) - 0.6 * at.font();
    g.strokeRoundRect(
        x - at.column() / 2 + 1,
        top,
        at.column() - 2,
        at.ruler(line) + 1.2 * at.font() - top,
        0.5 * at.font(),
        0.5 * at.font());
  }

  private double y(int line, int step) {
    return at.top(line) + (page.step(step).place().string().number() - 1) * at.stringGap();
  }

  private void text(String text, double x, double y, Font font, Color fill, TextAlignment align) {
    g.setFont(font);
    g.setFill(fill);
    g.setTextAlign(align);
    g.fillText(text, x, y);
  }

  private static double crisp(double y) {
    return Math.floor(y) + 0.5;
  }
}
