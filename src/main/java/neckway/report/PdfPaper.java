package neckway.report;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import neckway.sheet.Letters;
import neckway.words.Wording;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.pdmodel.graphics.state.RenderingMode;

/**
 * Pages of A4 as PDF, the font embedded. Lengths in points, 72 an inch; x from the left, y from the
 * top. What is written keeps to the part that Letter paper has too.
 */
final class PdfPaper implements AutoCloseable {
  /** A4 (ISO 216: 210 by 297 mm). */
  private static final double PAGE_WIDTH = 210 / 25.4 * 72;

  private static final double PAGE_HEIGHT = 297 / 25.4 * 72;

  /** Letter (ANSI Y14.1: 8.5 by 11 in) is lower; half an inch stays free above and below. */
  private static final double USED_HEIGHT = 11 * 72 - 72;

  static final double LEFT = 42;
  static final double RIGHT = PAGE_WIDTH - LEFT;
  static final double TOP = (PAGE_HEIGHT - USED_HEIGHT) / 2;
  static final double BOTTOM = TOP + USED_HEIGHT;

  /** Half a circle's arc as a cubic curve: 4/3 (sqrt(2) - 1) of the radius. */
  private static final double ARC = 0.5523;

  /** The stroke that makes letters bold, as a share of their size. */
  private static final double BOLD = 0.035;

  /** How something is drawn. */
  record Ink(float red, float green, float blue) {
    static final Ink BLACK = grey(0.106f);
    static final Ink WHITE = grey(1);
    static final Ink SOFT = grey(0.29f);
    static final Ink RED = new Ink(0.549f, 0.114f, 0.075f);

    static Ink grey(float share) {
      return new Ink(share, share, share);
    }
  }

  private final Letters letters;
  private final PDDocument document = new PDDocument();
  private final PDFont font;
  private PDPageContentStream content;

  PdfPaper(Letters letters, String title) {
    this.letters = letters;
    try {
      document.getDocumentInformation().setTitle(title);
      document.getDocumentInformation().setCreator("Neckway");
      document.getDocumentCatalog().setLanguage(Wording.of("report.language"));
      font = PDType0Font.load(document, letters.file(), true);
      content = page();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private PDPageContentStream page() throws IOException {
    PDPage page = new PDPage(new PDRectangle((float) PAGE_WIDTH, (float) PAGE_HEIGHT));
    document.addPage(page);
    return new PDPageContentStream(document, page);
  }

  /** Goes on on a new page. */
  void turn() {
    draw(
        () -> {
          content.close();
          content = page();
        });
  }

  int pages() {
    return document.getNumberOfPages();
  }

  Letters letters() {
    return letters;
  }

  /** Something drawn. */
  private interface Drawing {
    void draw() throws IOException;
  }

  private static void draw(Drawing drawing) {
    try {
      drawing.draw();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static float up(double y) {
    return (float) (PAGE_HEIGHT - y);
  }

  /** Writes a text of which each letter is in the font. */
  void text(String text, double x, double baseline, double size, boolean bold, Ink ink) {
    draw(
        () -> {
          content.beginText();
          fill(ink);
          stroke(ink);
          content.setLineWidth((float) (BOLD * size));
          content.setRenderingMode(bold ? RenderingMode.FILL_STROKE : RenderingMode.FILL);
          content.setFont(font, (float) size);
          content.newLineAtOffset((float) x, up(baseline));
          content.showText(text);
          content.endText();
        });
  }

  private void fill(Ink ink) throws IOException {
    content.setNonStrokingColor(ink.red(), ink.green(), ink.blue());
  }

  private void stroke(Ink ink) throws IOException {
    content.setStrokingColor(ink.red(), ink.green(), ink.blue());
  }

  void line(double x1, double y1, double x2, double y2, double width, Ink ink) {
    draw(
        () -> {
          stroke(ink);
          content.setLineWidth((float) width);
          content.moveTo((float) x1, up(y1));
          content.lineTo((float) x2, up(y2));
          content.stroke();
        });
  }

  /**
   * How an area is drawn.
   *
   * @param width of its edge, points; 0 for none
   * @param dash length of the edge's strokes, points; 0 for an unbroken one
   */
  record Area(Ink inside, Ink edge, double width, double dash) {}

  /** A box with round corners. */
  void box(double x, double y, double width, double height, double radius, Area area) {
    double r = Math.min(radius, Math.min(width, height) / 2);
    double c = r * (1 - ARC);
    double right = x + width;
    double below = y + height;
    draw(
        () -> {
          content.moveTo((float) (x + r), up(y));
          content.lineTo((float) (right - r), up(y));
          curve(right - c, y, right, y + c, right, y + r);
          content.lineTo((float) right, up(below - r));
          curve(right, below - c, right - c, below, right - r, below);
          content.lineTo((float) (x + r), up(below));
          curve(x + c, below, x, below - c, x, below - r);
          content.lineTo((float) x, up(y + r));
          curve(x, y + c, x + c, y, x + r, y);
          paint(area);
        });
  }

  private void curve(double x1, double y1, double x2, double y2, double x, double y)
      throws IOException {
    content.curveTo((float) x1, up(y1), (float) x2, up(y2), (float) x, up(y));
  }

  /** An area with corners: x, y, x, y. */
  void corners(double[] at, Area area) {
    draw(
        () -> {
          content.moveTo((float) at[0], up(at[1]));
          for (int i = 2; i < at.length; i += 2) {
            content.lineTo((float) at[i], up(at[i + 1]));
          }
          paint(area);
        });
  }

  private void paint(Area area) throws IOException {
    content.closePath();
    fill(area.inside());
    if (area.width() == 0) {
      content.fill();
      return;
    }
    stroke(area.edge());
    content.setLineWidth((float) area.width());
    float dash = (float) area.dash();
    content.setLineDashPattern(dash == 0 ? new float[0] : new float[] {dash, dash * 2 / 3}, 0);
    content.fillAndStroke();
    content.setLineDashPattern(new float[0], 0);
  }

  /** The file; nothing can be drawn any more. */
  byte[] pdf() {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    draw(
        () -> {
          content.close();
          document.save(bytes);
        });
    return bytes.toByteArray();
  }

  @Override
  public void close() {
    draw(document::close);
  }
}
