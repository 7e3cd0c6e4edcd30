package neckway.sheet;

import java.io.IOException;
import java.io.UncheckedIOException;
import neckway.drill.PlayableDrill;
import neckway.words.Wording;

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
    try (PdfCanvas canvas = new PdfCanvas(drill.spokenTitle())) {
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
        Wording.of(
            drill.shapes().size() > 1 ? "music.sheet.neck.chain" : "music.sheet.neck.shape", tonic),
        Ink.GREY);
    y = new TabFigure(canvas, drill, MARGIN, WIDTH).draw(y + BETWEEN_PARTS) + 2 * LEADING;
    say(Wording.of(slides() ? "music.sheet.tab.slides" : "music.sheet.tab.plain"), Ink.GREY);
    y += LEADING;
    PracticeWords.advice(drill).forEach(sentence -> say(sentence, Ink.BLACK));
  }

  private boolean slides() {
    RoutePlaces places = new RoutePlaces(drill);
    return drill.route().shifts().stream().anyMatch(s -> places.slidesOn(s.landingStep() - 1));
  }

  /** In large letters, smaller ones where it is long; cut where even those are too large. */
  private void title() {
    Letters letters = canvas.letters();
    String title = letters.known(drill.spokenTitle());
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
