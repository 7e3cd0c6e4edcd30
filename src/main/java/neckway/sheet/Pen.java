package neckway.sheet;

import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;

/** Draws what both the neck and the tab are made of. */
final class Pen {
  static final double THIN = 0.6;
  static final double THICK = 1.6;

  /** Height of a figure as a share of the size of its letters: Liberation Sans has 0.69. */
  private static final double FIGURE_HEIGHT = 0.69;

  private final Canvas canvas;

  Pen(Canvas canvas) {
    this.canvas = canvas;
  }

  void line(double x1, double y1, double x2, double y2, double width, Ink ink) {
    canvas.stroke(new Line2D.Double(x1, y1, x2, y2), width, ink);
  }

  /** Writes a text with its middle at a point. */
  void centred(String text, double x, double y, double size, Ink ink) {
    double left = x - canvas.letters().width(text, size) / 2;
    canvas.text(text, left, y + size * FIGURE_HEIGHT / 2, size, ink);
  }

  /** The same, on a blank that leaves no line behind it. */
  void centredOnBlank(String text, double x, double y, double size) {
    double width = canvas.letters().width(text, size) + 2;
    double height = size * FIGURE_HEIGHT + 1;
    canvas.fill(new Rectangle2D.Double(x - width / 2, y - height / 2, width, height), Ink.WHITE);
    centred(text, x, y, size, Ink.BLACK);
  }
}
