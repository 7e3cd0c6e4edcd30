package neckway.sheet;

import java.awt.geom.Area;
import java.awt.geom.Path2D;
import java.awt.geom.QuadCurve2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import neckway.drill.PlayableDrill;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.Place;
import neckway.neck.PlacedNote;
import neckway.neck.PlacedShape;
import neckway.neck.PlannedShift;
import neckway.neck.Step;

/**
 * The piece of the neck that a drill is on, string 1 on top: the notes of the shapes with their
 * fingers, the shifts as arrows, and under it how far each shape reaches.
 */
final class NeckFigure {
  private static final double NAMES_WIDTH = 22;
  private static final double STRING_SPACING = 20;
  private static final double WIDEST_CELL = 46;
  private static final double NOTE_HEIGHT = 12;
  private static final double SHARED_WIDTH = 20;
  private static final double FIGURES = 8;
  private static final double FRET_ROW = 20;
  private static final double SHAPE_ROW = 14;
  private static final double TICK = 3;
  private static final double ARC = 7;
  private static final double ARROW_HEAD = 3.4;

  private final Canvas canvas;
  private final Pen pen;
  private final PlayableDrill drill;
  private final double left;
  private final double top;
  private final double cell;
  private final int lowest;
  private final int highest;

  /**
   * @param left of the figure, points
   * @param top of its first string, points
   * @param width that there is, points
   */
  NeckFigure(Canvas canvas, PlayableDrill drill, double left, double top, double width) {
    this.canvas = canvas;
    this.pen = new Pen(canvas);
    this.drill = drill;
    this.top = top;
    this.left = left + NAMES_WIDTH;
    lowest = drill.chain().stream().mapToInt(NeckFigure::lowest).min().orElseThrow();
    highest = drill.chain().stream().mapToInt(NeckFigure::highest).max().orElseThrow();
    cell = Math.min(WIDEST_CELL, (width - NAMES_WIDTH) / (highest - lowest + 1));
  }

  private static int lowest(PlacedShape shape) {
    return shape.notes().stream().mapToInt(note -> note.place().fret()).min().orElseThrow();
  }

  private static int highest(PlacedShape shape) {
    return shape.notes().stream().mapToInt(note -> note.place().fret()).max().orElseThrow();
  }

  /** Draws it, and says where it ends, in points from the top of the page. */
  double draw() {
    board();
    drill.route().shifts().stream().filter(shift -> shift.round() == 0).forEach(this::arrow);
    for (GuitarString string : drill.tuning().strings()) {
      for (int fret = lowest; fret <= highest; fret++) {
        note(new Place(string, fret));
      }
    }
    double y = bottom() + FRET_ROW;
    for (int shape = 0; shape < drill.chain().size(); shape++) {
      y += SHAPE_ROW;
      reach(shape, y);
    }
    return y + TICK;
  }

  private double bottom() {
    return top + (drill.tuning().count() - 1) * STRING_SPACING;
  }

  private double y(GuitarString string) {
    return top + (string.number() - 1) * STRING_SPACING;
  }

  private double middle(int fret) {
    return left + (fret - lowest + 0.5) * cell;
  }

  private void board() {
    double right = middle(highest) + cell / 2;
    double nut = lowest == 0 ? middle(0) + cell / 2 : left;
    for (GuitarString string : drill.tuning().strings()) {
      pen.line(nut, y(string), right, y(string), Pen.THIN, Ink.GREY);
      int row = drill.tuning().count() - string.number();
      String name = drill.tuning().lowToHigh().get(row).note();
      pen.centred(name, left - NAMES_WIDTH / 2, y(string), FIGURES, Ink.BLACK);
    }
    for (int fret = Math.max(0, lowest - 1); fret <= highest; fret++) {
      double x = middle(fret) + cell / 2;
      pen.line(x, top, x, bottom(), fret == 0 ? 2 * Pen.THICK : Pen.THIN, Ink.GREY);
    }
    for (int fret = lowest; fret <= highest; fret++) {
      pen.centred(
          Integer.toString(fret),
          middle(fret),
          bottom() + FRET_ROW - FIGURES / 2,
          FIGURES,
          Ink.GREY);
    }
  }

  private void note(Place place) {
    List<Integer> shapes =
        IntStream.range(0, drill.chain().size())
            .filter(shape -> has(shape, place))
            .boxed()
            .toList();
    if (shapes.isEmpty()) {
      return;
    }
    double width = shapes.size() > 1 ? SHARED_WIDTH : NOTE_HEIGHT;
    double x = middle(place.fret());
    double y = y(place.string());
    RoundRectangle2D outline =
        new RoundRectangle2D.Double(
            x - width / 2, y - NOTE_HEIGHT / 2, width, NOTE_HEIGHT, NOTE_HEIGHT, NOTE_HEIGHT);
    canvas.fill(outline, ink(shapes.get(0)));
    if (shapes.size() > 1) {
      Area upper = new Area(outline);
      upper.intersect(new Area(new Rectangle2D.Double(x, y - NOTE_HEIGHT, width, 2 * NOTE_HEIGHT)));
      canvas.fill(upper, ink(shapes.get(1)));
    }
    boolean tonic = drill.key().isTonic(drill.tuning().midi(place));
    canvas.stroke(outline, tonic ? Pen.THICK : Pen.THIN, Ink.BLACK);
    String fingers =
        shapes.stream()
            .map(shape -> Integer.toString(note(shape, place).finger()))
            .collect(Collectors.joining("/"));
    pen.centred(fingers, x, y, FIGURES, Ink.BLACK);
  }

  private boolean has(int shape, Place place) {
    return drill.chain().get(shape).notes().stream().anyMatch(note -> note.place().equals(place));
  }

  private PlacedNote note(int shape, Place place) {
    return drill.chain().get(shape).notes().stream()
        .filter(note -> note.place().equals(place))
        .findFirst()
        .orElseThrow();
  }

  /** Neighbours differ. */
  private static Ink ink(int shape) {
    return shape % 2 == 0 ? Ink.WHITE : Ink.SHADE;
  }

  /** Over the string going up, under it coming down. */
  private void arrow(PlannedShift shift) {
    Step from = drill.route().steps().get(shift.landingStep() - 1);
    Step to = drill.route().steps().get(shift.landingStep());
    double side = shift.direction() == Direction.UP ? -1 : 1;
    double edge = y(shift.string()) + side * NOTE_HEIGHT / 2;
    double x1 = middle(from.place().fret());
    double x2 = middle(to.place().fret());
    double ahead = Math.signum(x2 - x1);
    double peak = edge + side * ARC;
    canvas.stroke(
        new QuadCurve2D.Double(x1, edge, (x1 + x2) / 2, peak, x2 - ahead * ARROW_HEAD, edge + side),
        1,
        Ink.BLACK);
    Path2D head = new Path2D.Double();
    head.moveTo(x2, edge);
    head.lineTo(x2 - ahead * 2 * ARROW_HEAD, edge - side * 0.5);
    head.lineTo(x2 - ahead * ARROW_HEAD, edge + side * ARROW_HEAD * 1.2);
    head.closePath();
    canvas.fill(head, Ink.BLACK);
  }

  private void reach(int shape, double y) {
    PlacedShape placed = drill.chain().get(shape);
    double from = middle(lowest(placed)) - cell / 2 + 2;
    double to = middle(highest(placed)) + cell / 2 - 2;
    pen.line(from, y, to, y, Pen.THIN, Ink.BLACK);
    pen.line(from, y - TICK, from, y + TICK, Pen.THIN, Ink.BLACK);
    pen.line(to, y - TICK, to, y + TICK, Pen.THIN, Ink.BLACK);
    String name = placed.shape().spoken();
    double middle = (from + to) / 2;
    pen.centredOnBlank(name, middle, y, FIGURES);
    double sample = middle - canvas.letters().width(name, FIGURES) / 2 - NOTE_HEIGHT / 2;
    double size = FIGURES * 0.8;
    RoundRectangle2D dot =
        new RoundRectangle2D.Double(sample - size / 2, y - size / 2, size, size, size, size);
    canvas.fill(dot, ink(shape));
    canvas.stroke(dot, Pen.THIN, Ink.BLACK);
  }
}
