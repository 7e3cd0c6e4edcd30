package neckway.sheet;

import java.awt.Shape;

/** A page of A4 to draw on. Lengths in points, 72 an inch; x from the left, y from the top. */
interface Canvas {
  /** Width of A4 (ISO 216: 210 mm). */
  double WIDTH = 210 / 25.4 * 72;

  /** Height of A4 (ISO 216: 297 mm). */
  double HEIGHT = 297 / 25.4 * 72;

  void fill(Shape shape, Ink ink);

  void stroke(Shape shape, double width, Ink ink);

  /** Writes a text of which each letter is in the font, see {@link Letters#known}. */
  void text(String text, double x, double baseline, double size, Ink ink);

  /** The letters that are written. */
  Letters letters();
}
