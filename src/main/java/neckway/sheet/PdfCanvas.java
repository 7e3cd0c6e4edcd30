package neckway.sheet;

import java.awt.Shape;
import java.awt.geom.PathIterator;
import java.io.ByteArrayOutputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.UncheckedIOException;
import neckway.words.Wording;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** A page as PDF: lines and letters, the font embedded with the letters that are used. */
final class PdfCanvas implements Canvas, Closeable {
  private final Letters letters = new Letters();
  private final PDDocument document = new PDDocument();
  private final PDFont font;
  private final PDPageContentStream content;

  PdfCanvas(String title) {
    try {
      PDPage page = new PDPage(new PDRectangle((float) WIDTH, (float) HEIGHT));
      document.addPage(page);
      document.getDocumentInformation().setTitle(title);
      document.getDocumentInformation().setCreator("Neckway");
      document.getDocumentCatalog().setLanguage(Wording.of("report.language"));
      font = PDType0Font.load(document, letters.file(), true);
      content = new PDPageContentStream(document, page);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void fill(Shape shape, Ink ink) {
    try {
      content.setNonStrokingColor(ink.colour());
      path(shape);
      content.fill();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void stroke(Shape shape, double width, Ink ink) {
    try {
      content.setStrokingColor(ink.colour());
      content.setLineWidth((float) width);
      path(shape);
      content.stroke();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** PDF counts y from the bottom and has cubic curves only. */
  private void path(Shape shape) throws IOException {
    float[] p = new float[6];
    float x = 0;
    float y = 0;
    for (PathIterator path = shape.getPathIterator(null); !path.isDone(); path.next()) {
      int kind = path.currentSegment(p);
      for (int i = 1; i < p.length; i += 2) {
        p[i] = (float) HEIGHT - p[i];
      }
      switch (kind) {
        case PathIterator.SEG_MOVETO -> content.moveTo(p[0], p[1]);
        case PathIterator.SEG_LINETO -> content.lineTo(p[0], p[1]);
        case PathIterator.SEG_QUADTO ->
            content.curveTo(
                x + (p[0] - x) * 2 / 3,
                y + (p[1] - y) * 2 / 3,
                p[2] + (p[0] - p[2]) * 2 / 3,
                p[3] + (p[1] - p[3]) * 2 / 3,
                p[2],
                p[3]);
        case PathIterator.SEG_CUBICTO -> content.curveTo(p[0], p[1], p[2], p[3], p[4], p[5]);
        case PathIterator.SEG_CLOSE -> content.closePath();
        default -> throw new IllegalStateException("path segment " + kind);
      }
      int last =
          switch (kind) {
            case PathIterator.SEG_QUADTO -> 2;
            case PathIterator.SEG_CUBICTO -> 4;
            default -> 0;
          };
      x = p[last];
      y = p[last + 1];
    }
  }

  @Override
  public void text(String text, double x, double baseline, double size, Ink ink) {
    try {
      content.setNonStrokingColor(ink.colour());
      content.beginText();
      content.setFont(font, (float) size);
      content.newLineAtOffset((float) x, (float) (HEIGHT - baseline));
      content.showText(text);
      content.endText();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public Letters letters() {
    return letters;
  }

  /** The page as a PDF file; nothing can be drawn any more. */
  byte[] pdf() {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      content.close();
      document.save(bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  @Override
  public void close() throws IOException {
    document.close();
  }
}
