package neckway.sheet;

import java.io.IOException;
import java.io.UncheckedIOException;
import neckway.drill.PlayableDrill;

/**
 * A drill on a page of A4: the neck with the shapes and shifts, a round as tab, and how to practise
 * it. Drawn once, to either kind of file.
 */
public final class SheetPage {
  private static final double MARGIN = 50;
  private static final double WIDTH = Canvas.WIDTH - 2 * MARGIN;
  private static final double TITLE = 18;
  private static final double SMALLEST_TITLE = 9;
  private static final double TEXT = 9.5;
  private static final double LEADING = 13;
  private static final double BETWEEN_PARTS = 30;
  private static final String CUT = "...";

  private final Canvas canvas;
  private final PlayableDrill drill;
  private double y = MARGIN;

  private SheetPage(Canvas canvas, PlayableDrill drill) {
    this.canvas = canvas;
    this.drill = drill;
  }

  /** The page as a PDF file: vectors, the font embedded. */
  public static byte[] pdf(PlayableDrill drill) {
    try (PdfCanvas canvas = new PdfCanvas(drill.title())) {
      draw(canvas, drill);
      return canvas.pdf();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The page as a PNG picture, 150 dots an inch. */
  public static byte[] png(PlayableDrill drill) {
    PictureCanvas canvas = new PictureCanvas();
    draw(canvas, drill);
    return canvas.png();
  }

  /** Draws the page. */
  static void draw(Canvas canvas, PlayableDrill drill) {
    new SheetPage(canvas, drill).draw();
  }

  private void draw() {
    title();
    say(PracticeWords.facts(drill), Ink.BLACK);
    y += BETWEEN_PARTS - LEADING;
    y = new NeckFigure(canvas, drill, MARGIN, y, WIDTH).draw() + LEADING + LEADING / 2;
    String tonic = drill.key().tonicName();
    say(
        "The figures on the neck are fingers, 0 is an open string; a thick ring marks "
            + tonic
            + "."
            + (drill.shapes().size() > 1
                ? " Where two shapes share a note, the lower one's finger stands first."
                    + " Arrows are the shifts: over the string going up, under it coming down."
                : ""),
        Ink.GREY);
    y = new TabFigure(canvas, drill, MARGIN, WIDTH).draw(y + BETWEEN_PARTS) + 2 * LEADING;
    say("The figures on the lines are frets, those under them fingers." + slides(), Ink.GREY);
    y += LEADING;
    PracticeWords.advice(drill).forEach(sentence -> say(sentence, Ink.BLACK));
  }

  private String slides() {
    RoutePlaces places = new RoutePlaces(drill);
    boolean slid =
        drill.route().shifts().stream().anyMatch(s -> places.slidesOn(s.landingStep() - 1));
    return slid ? " A slanted line: the finger slides and stays down." : "";
  }

  /** In large letters, smaller ones where it is long; cut where even those are too large. */
  private void title() {
    Letters letters = canvas.letters();
    String title = letters.known(drill.title());
    double size = TITLE * Math.min(1, WIDTH / letters.width(title, TITLE));
    if (size < SMALLEST_TITLE) {
      size = SMALLEST_TITLE;
      int end = title.length();
      while (letters.width(title.substring(0, end) + CUT, size) > WIDTH) {
        end = title.offsetByCodePoints(end, -1);
      }
      title = title.substring(0, end) + CUT;
    }
    y += TITLE;
    canvas.text(title, MARGIN, y, size, Ink.BLACK);
    y += LEADING + LEADING / 2;
  }

  private void say(String sentence, Ink ink) {
    for (String line : canvas.letters().lines(canvas.letters().known(sentence), TEXT, WIDTH)) {
      canvas.text(line, MARGIN, y, TEXT, ink);
      y += LEADING;
    }
  }
}
