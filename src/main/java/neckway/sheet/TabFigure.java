package neckway.sheet;

import java.util.List;
import neckway.drill.PlayableDrill;
import neckway.neck.GuitarString;
import neckway.neck.Step;

/** A round of a route as tab, with bars, fingers under the notes, and the shifts marked. */
final class TabFigure {
  /** Notes in a line of tab, at most: of a width that can be read on A4. */
  private static final int MOST_NOTES = 24;

  private static final double NAMES_WIDTH = 22;
  private static final double LINE_SPACING = 9.5;
  private static final double WIDEST_CELL = 30;
  private static final double FIGURES = 9;
  private static final double SMALL = 7.5;
  private static final double FINGER_ROW = 13;
  private static final double WORDS_ROW = 9;
  private static final double BETWEEN = 30;
  private static final double SLIDE_RISE = 2.5;

  private final Canvas canvas;
  private final Pen pen;
  private final PlayableDrill drill;
  private final RoutePlaces places;
  private final List<Step> round;
  private final double left;
  private final double cell;
  private final int notesPerBar;
  private final int notesPerSystem;
  private final int offset;

  /**
   * @param left of the figure, points
   * @param width that there is, points
   */
  TabFigure(Canvas canvas, PlayableDrill drill, double left, double width) {
    this.canvas = canvas;
    this.pen = new Pen(canvas);
    this.drill = drill;
    this.left = left + NAMES_WIDTH;
    places = new RoutePlaces(drill);
    round = drill.route().steps().subList(0, drill.route().stepsPerRound());
    int notesPerBeat = drill.pulse().notesPerBeat();
    notesPerBar = notesPerBeat * drill.pulse().beatsPerBar();
    offset = drill.pulse().slots().offset();
    notesPerSystem = shared(notesPerBar <= MOST_NOTES ? notesPerBar : notesPerBeat);
    int longest = Math.min(notesPerSystem, round.size());
    cell = Math.min(WIDEST_CELL, (width - NAMES_WIDTH) / longest);
  }

  /**
   * Notes in each line of tab, so that the lines are about as long as one another.
   *
   * @param whole notes that stand in one line
   */
  private int shared(int whole) {
    int pieces = (round.size() + whole - 1) / whole;
    int fit = MOST_NOTES / whole;
    int systems = (pieces + fit - 1) / fit;
    return (pieces + systems - 1) / systems * whole;
  }

  /**
   * Draws it, and says where it ends, in points from the top of the page.
   *
   * @param top of its first line, points
   */
  double draw(double top) {
    double y = top;
    double end = top;
    for (int from = 0; from < round.size(); from += notesPerSystem) {
      system(from, Math.min(round.size(), from + notesPerSystem), y);
      end = y + height() + FINGER_ROW;
      y = end + BETWEEN;
    }
    return end;
  }

  private double height() {
    return (drill.tuning().count() - 1) * LINE_SPACING;
  }

  private void system(int from, int to, double top) {
    double right = left + (to - from) * cell;
    for (GuitarString string : drill.tuning().strings()) {
      double y = y(string, top);
      pen.line(left, y, right, y, Pen.THIN, Ink.GREY);
      int row = drill.tuning().count() - string.number();
      String name = drill.tuning().lowToHigh().get(row).note();
      pen.centred(name, left - NAMES_WIDTH / 2, y, SMALL, Ink.GREY);
    }
    for (int step = from; step < to; step++) {
      if ((offset + step) % notesPerBar == 0) {
        bar(left + (step - from) * cell, top, Pen.THIN);
      }
      slide(from, to, step, top);
      note(from, step, top);
    }
    if (to == round.size()) {
      bar(right, top, Pen.THICK);
    } else if ((offset + to) % notesPerBar == 0) {
      bar(right, top, Pen.THIN);
    }
  }

  private void bar(double x, double top, double width) {
    pen.line(x, top, x, top + height(), width, Ink.BLACK);
  }

  private double y(GuitarString string, double top) {
    return top + (string.number() - 1) * LINE_SPACING;
  }

  private double x(int from, int step) {
    return left + (step - from + 0.5) * cell;
  }

  private void note(int from, int index, double top) {
    Step step = round.get(index);
    double x = x(from, index);
    String fret = Integer.toString(step.place().fret());
    pen.centredOnBlank(fret, x, y(step.place().string(), top), FIGURES);
    pen.centred(Integer.toString(step.finger()), x, top + height() + FINGER_ROW, SMALL, Ink.BLACK);
    places
        .landing(index)
        .ifPresent(shift -> pen.centred(places.to(shift), x, top - WORDS_ROW, SMALL, Ink.BLACK));
  }

  /** A slanted line between two notes, up or down as the finger goes. */
  private void slide(int from, int to, int index, double top) {
    if (index + 1 >= to || !places.slidesOn(index)) {
      return;
    }
    Step step = round.get(index);
    Step next = round.get(index + 1);
    double gap = canvas.letters().width("00", FIGURES) / 2 + 1;
    double y = y(step.place().string(), top);
    double rise = next.place().fret() > step.place().fret() ? SLIDE_RISE : -SLIDE_RISE;
    pen.line(x(from, index) + gap, y + rise, x(from, index + 1) - gap, y - rise, 1, Ink.BLACK);
  }
}
