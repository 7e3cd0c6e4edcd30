package neckway.sheet;

import java.awt.Font;
import java.awt.FontFormatException;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;

/** The one font on paper: Liberation Sans (SIL Open Font License 1.1), which PDFBox brings. */
public final class Letters {
  private static final String RESOURCE =
      "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";
  private static final String UNKNOWN = "?";

  private final byte[] file;
  private final TrueTypeFont font;
  private final CmapLookup glyphs;

  /** Reads the font. */
  public Letters() {
    try (InputStream in = PDDocument.class.getResourceAsStream(RESOURCE)) {
      file = in.readAllBytes();
      font = new TTFParser().parse(new RandomAccessReadBuffer(file));
      glyphs = font.getUnicodeCmapLookup();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The font's file. */
  public InputStream file() {
    return new ByteArrayInputStream(file);
  }

  /** The font for pictures, of size 1. */
  Font forPictures() {
    try {
      return Font.createFont(Font.TRUETYPE_FONT, file());
    } catch (FontFormatException e) {
      throw new IllegalStateException("the font that PDFBox brings is none", e);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A text in which a question mark stands for each letter that the font does not have. */
  public String known(String text) {
    StringBuilder known = new StringBuilder();
    text.codePoints()
        .forEach(
            letter -> {
              boolean there = !Character.isISOControl(letter) && glyphs.getGlyphId(letter) != 0;
              known.append(there ? Character.toString(letter) : UNKNOWN);
            });
    return known.toString();
  }

  /** How wide a text is, in points. */
  public double width(String text, double size) {
    return size * text.codePoints().mapToDouble(this::advance).sum();
  }

  private double advance(int letter) {
    try {
      return (double) font.getAdvanceWidth(glyphs.getGlyphId(letter)) / font.getUnitsPerEm();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Breaks prose into lines that are no wider than so many points. */
  List<String> lines(String prose, double size, double width) {
    List<String> lines = new ArrayList<>();
    String line = "";
    for (String word : prose.split(" ")) {
      String longer = line.isEmpty() ? word : line + " " + word;
      if (!line.isEmpty() && width(longer, size) > width) {
        lines.add(line);
        longer = word;
      }
      line = longer;
    }
    lines.add(line);
    return lines;
  }
}
