package neckway.report;

import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import neckway.report.PdfPaper.Area;
import neckway.report.PdfPaper.Ink;
import neckway.sheet.Letters;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.Text;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/**
 * A report on paper: the page of HTML, part by part, set on pages of A4. It is set smaller until
 * two pages hold it; what even the smallest letters cannot bring on two goes on on a third.
 */
final class PaperReport {
  private static final int MOST_PAGES = 2;
  private static final double LEADING = 1.3;
  private static final double HEADING = 1.15;
  private static final double TITLE = 1.5;
  private static final double SMALL = 0.85;
  private static final double INDENT = 14;
  private static final double GAP = 8;

  private static final Area BLACK = new Area(Ink.BLACK, Ink.BLACK, 0, 0);

  /** Shares of the width that the columns of the shifts' table have. */
  private static final double[] COLUMNS = {0.17, 0.29, 0.34, 0.2};

  /**
   * A size.
   *
   * @param letters of plain text, points
   * @param unit of the pictures, points
   */
  private record Size(double letters, double unit) {}

  /** From the largest. With the last, a picture's labels are as small as a sheet's. */
  private static final List<Size> SIZES =
      List.of(
          new Size(10, 0.8),
          new Size(9.5, 0.72),
          new Size(9, 0.64),
          new Size(8.5, 0.58),
          new Size(8, 0.53));

  /** Letters that look alike. */
  private record Word(String text, boolean bold) {}

  private final PdfPaper paper;
  private final Size size;
  private double y = PdfPaper.TOP;

  private PaperReport(PdfPaper paper, Size size) {
    this.paper = paper;
    this.size = size;
  }

  /**
   * The file.
   *
   * @param html the page, which is well-formed as XML
   */
  static byte[] of(String html) {
    Element page = parsed(html);
    String title = page.getElementsByTagName("title").item(0).getTextContent();
    Element main = (Element) page.getElementsByTagName("main").item(0);
    Letters letters = new Letters();
    byte[] pdf = {};
    for (Size size : SIZES) {
      try (PdfPaper paper = new PdfPaper(letters, title)) {
        new PaperReport(paper, size).parts(main);
        int pages = paper.pages();
        pdf = paper.pdf();
        if (pages <= MOST_PAGES) {
          return pdf;
        }
      }
    }
    return pdf;
  }

  private static Element parsed(String html) {
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
      String xml = html.substring(html.indexOf("<html"));
      return factory
          .newDocumentBuilder()
          .parse(new InputSource(new StringReader(xml)))
          .getDocumentElement();
    } catch (ParserConfigurationException | SAXException | IOException e) {
      throw new IllegalStateException("the report's own page cannot be read", e);
    }
  }

  private static List<Element> children(Element parent) {
    List<Element> children = new ArrayList<>();
    for (Node at = parent.getFirstChild(); at != null; at = at.getNextSibling()) {
      if (at instanceof Element child) {
        children.add(child);
      }
    }
    return children;
  }

  private void parts(Element parent) {
    double before = y;
    int page = paper.pages();
    boolean next = parent.getAttribute("class").equals("next");
    List<Element> children = children(parent);
    for (int i = 0; i < children.size(); i++) {
      if (children.get(i).getTagName().equals("h2")) {
        heading(children.get(i), i + 1 < children.size() ? firstHeight(children.get(i + 1)) : 0);
      } else {
        part(children.get(i));
      }
    }
    if (next && page == paper.pages()) {
      y += GAP / 2;
      double top = before + GAP / 2;
      double width = PdfPaper.RIGHT - PdfPaper.LEFT + 2 * GAP;
      paper.box(PdfPaper.LEFT - GAP, top, width, 0.8, 0, BLACK);
      paper.box(PdfPaper.LEFT - GAP, y, width, 0.8, 0, BLACK);
      y += GAP / 2;
    }
  }

  private void part(Element part) {
    switch (part.getTagName()) {
      case "header", "section" -> parts(part);
      case "h1" -> text(part, size.letters() * TITLE, 0, true, Ink.BLACK);
      case "p", "footer" -> paragraph(part, 0);
      case "ul", "ol" -> children(part).forEach(this::item);
      case "div" -> pictures(part);
      case "table" -> table(part);
      default -> throw new IllegalStateException("a report with " + part.getTagName());
    }
  }

  private void paragraph(Element part, double indent) {
    boolean small =
        part.getAttribute("class").equals("small") || part.getTagName().equals("footer");
    double letters = size.letters() * (small ? SMALL : 1);
    text(part, letters, indent, false, small ? Ink.SOFT : Ink.BLACK);
    y += letters * 0.3;
  }

  /** A sentence, or a moment with all that is said of it. */
  private void item(Element item) {
    need(size.letters() * LEADING);
    double middle = y + size.letters() * 0.72;
    double dot = size.letters() * 0.3;
    paper.box(PdfPaper.LEFT + 2, middle - dot / 2, dot, dot, dot, BLACK);
    List<Element> said = children(item);
    if (said.isEmpty()) {
      paragraph(item, INDENT);
    } else {
      said.stream().filter(p -> p.getTagName().equals("p")).forEach(p -> paragraph(p, INDENT));
    }
  }

  /** A heading stays with the first of what follows. */
  private void heading(Element heading, double following) {
    double letters = size.letters() * HEADING;
    if (y > PdfPaper.TOP) {
      y += GAP;
    }
    need(letters * LEADING + following);
    text(heading, letters, 0, true, Ink.BLACK);
    y += 2;
  }

  private double firstHeight(Element part) {
    boolean pictures = part.getTagName().equals("div");
    List<Element> inside = children(part);
    return pictures && !inside.isEmpty()
        ? new PaperPicture(inside.get(0), size.unit()).height() + captionHeight()
        : 3 * LEADING * size.letters();
  }

  /** Of the two lines in small letters under a picture. */
  private double captionHeight() {
    return 2 * LEADING * SMALL * size.letters() + GAP / 2;
  }

  /** Turns the page where there is no more room on it. */
  private void need(double height) {
    if (y + height > PdfPaper.BOTTOM && y > PdfPaper.TOP) {
      paper.turn();
      y = PdfPaper.TOP;
    }
  }

  private void pictures(Element row) {
    double x = PdfPaper.LEFT;
    double below = y;
    for (Element svg : children(row)) {
      double room = PdfPaper.RIGHT - PdfPaper.LEFT;
      double wide = Double.parseDouble(svg.getAttribute("width"));
      PaperPicture picture = new PaperPicture(svg, Math.min(size.unit(), room / wide));
      if (x > PdfPaper.LEFT && x + picture.width() > PdfPaper.RIGHT) {
        x = PdfPaper.LEFT;
        y = below + GAP / 2;
      }
      if (x == PdfPaper.LEFT) {
        need(picture.height() + captionHeight());
        below = y;
      }
      picture.draw(paper, x, y);
      x += picture.width() + GAP;
      below = Math.max(below, y + picture.height());
    }
    y = below + GAP / 2;
  }

  private void table(Element table) {
    for (Element part : children(table)) {
      for (Element row : children(part)) {
        row(children(row), part.getTagName().equals("thead"));
      }
    }
    y += GAP / 2;
  }

  private void row(List<Element> cells, boolean bold) {
    double room = PdfPaper.RIGHT - PdfPaper.LEFT;
    double letters = size.letters();
    List<List<List<Word>>> set = new ArrayList<>();
    for (int i = 0; i < cells.size(); i++) {
      set.add(lines(words(cells.get(i), bold), letters, room * COLUMNS[i] - GAP));
    }
    int most = set.stream().mapToInt(List::size).max().orElse(1);
    need(most * letters * LEADING + 4);
    double x = PdfPaper.LEFT;
    for (int i = 0; i < set.size(); i++) {
      double baseline = y;
      for (List<Word> line : set.get(i)) {
        baseline += letters * LEADING;
        write(line, x, baseline - letters * 0.3, letters, Ink.BLACK);
      }
      x += room * COLUMNS[i];
    }
    y += most * letters * LEADING + 2;
    paper.line(PdfPaper.LEFT, y, PdfPaper.RIGHT, y, 0.5, Ink.grey(0.8f));
    y += 2;
  }

  private void text(Element part, double letters, double indent, boolean bold, Ink ink) {
    double width = PdfPaper.RIGHT - PdfPaper.LEFT - indent;
    for (List<Word> line : lines(words(part, bold), letters, width)) {
      need(letters * LEADING);
      y += letters * LEADING;
      write(line, PdfPaper.LEFT + indent, y - letters * 0.3, letters, ink);
    }
  }

  private void write(List<Word> line, double left, double baseline, double letters, Ink ink) {
    double x = left;
    int at = 0;
    while (at < line.size()) {
      boolean bold = line.get(at).bold();
      StringBuilder alike = new StringBuilder();
      while (at < line.size() && line.get(at).bold() == bold) {
        alike.append(line.get(at).text());
        at++;
      }
      paper.text(alike.toString(), x, baseline, letters, bold, ink);
      x += paper.letters().width(alike.toString(), letters);
    }
  }

  /** The text inside an element, in pieces that end with their spaces. */
  private List<Word> words(Element part, boolean bold) {
    List<Word> words = new ArrayList<>();
    for (Node at = part.getFirstChild(); at != null; at = at.getNextSibling()) {
      if (at instanceof Text text) {
        String known = paper.letters().known(text.getData().replaceAll("\\s+", " "));
        for (String word : known.split("(?<= )")) {
          words.add(new Word(word, bold));
        }
      } else if (at instanceof Element inside) {
        boolean strong =
            inside.getTagName().equals("strong") || inside.getAttribute("class").equals("time");
        words.addAll(words(inside, bold || strong));
      }
    }
    return words;
  }

  /** Breaks words into lines; one that is wider than a line is broken itself. */
  private List<List<Word>> lines(List<Word> words, double letters, double width) {
    List<List<Word>> lines = new ArrayList<>();
    List<Word> line = new ArrayList<>();
    double used = 0;
    for (Word word : words.stream().flatMap(w -> broken(w, letters, width).stream()).toList()) {
      double wide = paper.letters().width(word.text().stripTrailing(), letters);
      if (!line.isEmpty() && used + wide > width) {
        lines.add(line);
        line = new ArrayList<>();
        used = 0;
      }
      if (!line.isEmpty() || !word.text().isBlank()) {
        line.add(word);
        used += paper.letters().width(word.text(), letters);
      }
    }
    lines.add(line);
    return lines;
  }

  private List<Word> broken(Word word, double letters, double width) {
    List<Word> pieces = new ArrayList<>();
    StringBuilder piece = new StringBuilder();
    for (int letter : word.text().codePoints().toArray()) {
      String longer = piece + Character.toString(letter);
      if (piece.length() > 0 && paper.letters().width(longer.stripTrailing(), letters) > width) {
        pieces.add(new Word(piece.toString(), word.bold()));
        piece.setLength(0);
      }
      piece.appendCodePoint(letter);
    }
    pieces.add(new Word(piece.toString(), word.bold()));
    return pieces;
  }
}
