package neckway.desk.page;

import java.util.List;
import java.util.Optional;
import javafx.geometry.VPos;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.text.Font;
import javafx.scene.text.TextAlignment;
import neckway.desk.Type;
import neckway.hand.ShiftVerdict;
import neckway.neck.Pitch;
import neckway.neck.Place;
import neckway.page.LandingMark;
import neckway.page.PageModel;
import neckway.page.PageModel.Ink;
import neckway.page.PageStep;
import neckway.page.PlayedPlace.Known;
import neckway.page.TimeFigure;
import neckway.review.Timing;

/**
 * Draws one sheet of a page. Right, wrong, left out and struck twice differ by their form, and a
 * slip is the strongest sign there is. Where the page is played from, what comes next is stronger
 * than what was played.
 */
final class PagePainter {
  private static final double DIGIT = 0.62;

  /** Strength of the shade under marked steps, light enough for figures to be read on it. */
  private static final double SHADE = 0.1;

  /** A note that came later than this stands at the ruler as late as this; its figure tells. */
  private static final double MOST_SLOTS_OFF = 0.75;

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
  private final int lead;
  private final int firstAhead;
  private int markedFrom;
  private int markedTo;

  /** How far each of the two rows of landings under a line is written already. */
  private double[] landedUntil = new double[2];

  /**
   * @param lead how many notes that come next are inked strongly; 0 where nothing is played
   */
  PagePainter(
      GraphicsContext g, PageModel page, PageLayout at, Inks inks, PageWords words, int lead) {
    this.g = g;
    this.page = page;
    this.at = at;
    this.inks = inks;
    this.words = words;
    this.lead = lead;
    firstAhead = page.here().map(step -> step.index() + 1).orElse(0);
    figure = Type.of(false, at.font());
    bold = Type.of(true, at.font());
    heardFont = Type.of(true, 0.72 * at.font());
    small = Type.of(false, Math.max(9, 0.58 * at.font()));
    stroke = Math.max(1, at.font() / 18);
  }

  void lines(List<Integer> lines, double width, double height) {
    g.setFill(inks.paper());
    g.fillRect(0, 0, width, height);
    g.setTextBaseline(VPos.CENTER);
    g.setTextAlign(TextAlignment.CENTER);
    for (int line : lines) {
      int from = at.from(line, page.barSteps());
      int to = Math.min(at.to(line, page), page.knownSteps());
      shade(line);
      staff(line);
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

  /** Steps to be shaded, from one up to before another. */
  void marked(int from, int to) {
    markedFrom = from;
    markedTo = to;
  }

  private void shade(int line) {
    int bar = page.barSteps();
    int from = Math.max(markedFrom, at.from(line, bar));
    int to = Math.min(markedTo, at.to(line, page));
    if (from < to) {
      g.setFill(inks.ink().deriveColor(0, 1, 1, SHADE));
      double top = at.top(line) - 0.6 * at.font();
      double bottom = at.ruler(line) + 0.3 * at.font();
      double left = at.x(from, bar) - at.column() / 2;
      g.fillRect(left, top, (to - from) * at.column(), bottom - top);
    }
  }

  /** Marks the line that is being played, where lines do not stand in the order of playing. */
  void playedNow(int line) {
    g.setFill(inks.accent());
    // beside the names of the strings
    double x = at.left(line) - 0.98 * at.font();
    g.fillRect(x, at.top(line), 0.12 * at.font(), at.bottom(line) - at.top(line));
  }

  private void staff(int line) {
    double left = at.left(line);
    double right = left + at.columns(line, page) * at.column();
    g.setStroke(inks.line());
    g.setLineWidth(1);
    List<Pitch> names = page.drill().tuning().lowToHigh();
    for (int s = 0; s < page.strings(); s++) {
      double y = crisp(at.top(line) + s * at.stringGap());
      g.strokeLine(left, y, right, y);
      String name = names.get(page.strings() - 1 - s).note();
      text(name, left - 0.2 * at.font(), y, small, inks.soft(), TextAlignment.RIGHT);
    }
    if (at.ruled()) {
      g.strokeLine(left, crisp(at.ruler(line)), right, crisp(at.ruler(line)));
    }
    g.setStroke(inks.ink());
    g.strokeLine(crisp(right), at.top(line), crisp(right), at.bottom(line));
    int bar = page.barSteps();
    int before = line * at.barsPerLine();
    for (int i = 0; i * bar < at.columns(line, page); i++) {
      double x = crisp(left + i * bar * at.column());
      g.strokeLine(x, at.top(line), x, at.bottom(line));
      text(
          Integer.toString(page.firstBar() + before + i),
          x,
          at.top(line) - 1.55 * at.font(),
          small,
          inks.pale(),
          TextAlignment.LEFT);
    }
  }

  private void step(int line, int step, boolean firstOfLine) {
    double x = at.x(step, page.barSteps());
    double y = y(line, step);
    PageStep shown = page.at(step);
    selection(line, step, x);
    if (firstOfLine || page.hand(step) != page.hand(step - 1)) {
      text(
          handLabel(line, step),
          x - 0.5 * at.font(),
          at.top(line) - 0.95 * at.font(),
          small,
          inks.shape(page.stand(step)),
          TextAlignment.LEFT);
    }
    planned(shown, line, x);
    figure(shown, x, y);
    for (int i = 0; i < shown.landings().size(); i++) {
      landing(line, shown.landings().get(i), x, i);
    }
    if (!shown.strays().isEmpty()) {
      block(words.strays(shown), x + at.column() / 2, at.bottom(line) + 0.62 * at.font());
    }
    ruler(line, shown.time(), x);
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
    int columns = (last ? at.end(line, page) : next) - step;
    double room = columns * at.column() + (last ? at.margin() : 0);
    return room > DIGIT * small.getSize() * (full.length() + 1)
        ? full
        : Integer.toString(page.hand(step));
  }

  /** The place that was planned for a note that was played elsewhere, in pale ink. */
  private void planned(PageStep step, int line, double x) {
    if (step.played().elsewhere().isPresent()) {
      Place due = step.due().place();
      double y = y(line, due);
      String fret = Integer.toString(due.fret());
      blank(x, y, DIGIT * at.font() * fret.length());
      text(fret, x, y, figure, inks.pale(), TextAlignment.CENTER);
    }
  }

  /** Takes the string away behind a figure. */
  private void blank(double x, double y, double wide) {
    g.setFill(inks.paper());
    g.fillRect(x - wide / 2 - 2, y - 0.45 * at.font(), wide + 4, 0.9 * at.font());
  }

  private void figure(PageStep step, double x, double y) {
    String fret = Integer.toString(step.played().place().fret());
    double wide = DIGIT * at.font() * fret.length();
    blank(x, y, wide);
    Runnable sign =
        switch (step.ink()) {
          case WRONG -> () -> strike(x, y);
          case LEFT_OUT -> () -> ring(x, y, wide);
          case PALE, RIGHT, UNNAMED -> () -> {};
        };
    text(fret, x, y, isBold(step) ? bold : figure, colour(step), TextAlignment.CENTER);
    sign.run();
    boolean asked = step.ink() == Ink.UNNAMED || step.played().known() == Known.NOT_AS_PLANNED;
    if (page.marks() == PageModel.Marks.SHOWN && asked) {
      text("?", x + wide / 2 + 3, y - 0.4 * at.font(), small, inks.ink(), TextAlignment.LEFT);
    }
    if (step.twice()) {
      double by = 0.4 * at.font();
      halo(fret, x + by, y + by);
      text(fret, x + by, y + by, bold, inks.ink(), TextAlignment.CENTER);
    }
  }

  private boolean isRight(PageStep step) {
    return step.ink() == Ink.RIGHT && step.played().known() != Known.NOT_AS_PLANNED;
  }

  private boolean isSlip(PageStep step) {
    return step.ink() == Ink.WRONG || step.ink() == Ink.LEFT_OUT;
  }

  /** Whether a run is on its way, so that the page is played from. */
  private boolean isRunning() {
    return lead > 0 && !page.isOver() && firstAhead < page.steps();
  }

  private boolean isAhead(int step) {
    return isRunning() && step >= firstAhead;
  }

  private boolean isNext(int step) {
    return isAhead(step) && step < firstAhead + lead;
  }

  private boolean isBold(PageStep step) {
    return isNext(step.due().index()) || isRight(step) && !isRunning();
  }

  private Color colour(PageStep step) {
    if (isAhead(step.due().index())) {
      return isNext(step.due().index()) ? inks.ink() : inks.soft();
    }
    if (isSlip(step)) {
      return inks.ink();
    }
    boolean inked = isRight(step) || step.ink() == Ink.UNNAMED;
    return inked && !isRunning() ? inks.ink() : inks.pale();
  }

  /** Paper around a figure that stands over another one. */
  private void halo(String fret, double x, double y) {
    g.setFont(bold);
    g.setTextAlign(TextAlignment.CENTER);
    g.setStroke(inks.paper());
    g.setLineWidth(2.5 * stroke);
    g.strokeText(fret, x, y);
  }

  private void strike(double x, double y) {
    double reach = 0.7 * at.font();
    g.setStroke(inks.ink());
    g.setLineWidth(3 * stroke);
    g.strokeLine(x - reach, y + 0.5 * reach, x + reach, y - 0.5 * reach);
  }

  /** Words in paper's colour on a block of ink: the strongest that there is on a page. */
  private void block(String said, double x, double y) {
    double half = 0.5 * DIGIT * heardFont.getSize() * said.length() + 0.2 * at.font();
    double tall = 0.9 * at.font();
    double round = 0.3 * at.font();
    g.setFill(inks.ink());
    g.fillRoundRect(x - half, y - tall / 2, 2 * half, tall, round, round);
    text(said, x, y, heardFont, inks.paper(), TextAlignment.CENTER);
  }

  /** What was heard in place of a note, and how a landing fell. */
  private void over(int line, int step) {
    double x = at.x(step, page.barSteps());
    PageStep shown = page.at(step);
    if (shown.ink() == Ink.WRONG) {
      // where notes stand close, above rather than beside
      boolean close = at.column() < 2.2 * at.font();
      block(
          shown.heardLabel(),
          x + (close ? 0.7 : 1.1) * at.font(),
          y(line, step) - (close ? 0.92 : 0.66) * at.font());
    }
    shown.time().ifPresent(time -> landed(line, words.landed(time), x));
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
    g.setLineWidth(2.6 * stroke);
    g.setLineDashes(2 * stroke, 3.4 * stroke);
    g.strokeOval(x - across / 2, y - tall / 2, across, tall);
    g.setLineDashes();
  }

  /**
   * @param others how many landings stand over the step already
   */
  private void landing(int line, LandingMark mark, double x, int others) {
    int step = mark.step();
    boolean sameLine = step > 0 && at.line(step - 1, page.barSteps()) == line;
    double fromX = sameLine ? at.x(step - 1, page.barSteps()) : x - at.column();
    double highest = sameLine ? Math.min(y(line, step - 1), y(line, step)) : y(line, step);
    double y = highest - 0.6 * at.font();
    ShiftVerdict shown = mark.verdict().orElse(ShiftVerdict.UNPLAYED);
    boolean reached = shown != ShiftVerdict.UNPLAYED;
    g.setStroke(reached ? inks.ink() : isAhead(step) ? inks.soft() : inks.pale());
    g.setLineWidth(reached ? 1.8 * stroke : stroke);
    if (shown == ShiftVerdict.MOVED) {
      g.setLineDashes(5 * stroke, 4 * stroke);
    }
    double rise = (1.05 + 0.5 * others) * at.font();
    g.beginPath();
    g.moveTo(fromX, y);
    g.bezierCurveTo(fromX, y - rise, x, y - rise, x, y);
    g.stroke();
    g.setLineDashes();
    String said = words.shift(mark);
    if (!said.isEmpty()) {
      double middle = (fromX + x) / 2;
      text(said, middle, y - rise, small, inks.ink(), TextAlignment.CENTER);
    }
  }

  private void ruler(int line, Optional<TimeFigure> fell, double x) {
    if (!at.ruled()) {
      return;
    }
    double y = at.ruler(line);
    g.setStroke(inks.pale());
    g.setLineWidth(stroke);
    g.strokeLine(x, y - 0.2 * at.font(), x, y + 0.2 * at.font());
    if (fell.isEmpty()) {
      return;
    }
    TimeFigure time = fell.get();
    double heardX = x + Math.min(MOST_SLOTS_OFF, time.slots()) * at.column();
    g.setStroke(inks.ink());
    g.setLineWidth(1.8 * stroke);
    if (time.timing() == Timing.UNSURE) {
      g.setLineDashes(2 * stroke, 3 * stroke);
    }
    g.strokeLine(heardX, y - 0.42 * at.font(), heardX, y + 0.42 * at.font());
    g.setLineDashes();
    text(words.figure(time), x, y + 0.85 * at.font(), small, inks.ink(), TextAlignment.CENTER);
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
    return y(line, page.at(step).played().place());
  }

  private double y(int line, Place place) {
    return at.top(line) + (place.string().number() - 1) * at.stringGap();
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
