package neckway.report;

import java.util.Arrays;
import neckway.report.PdfPaper.Area;
import neckway.report.PdfPaper.Ink;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/** One of the report's pictures, as they stand in its page, drawn on paper. */
final class PaperPicture {
  private static final double TEXT = 12;
  private static final double LABEL = 11;
  private static final double SIGN = 13;
  private static final Area PLAIN = new Area(Ink.WHITE, Ink.WHITE, 0, 0);

  private final Element svg;
  private final double scale;

  /**
   * @param svg lines, boxes, discs, paths of straight lines, and texts
   * @param scale points for one of its units
   */
  PaperPicture(Element svg, double scale) {
    this.svg = svg;
    this.scale = scale;
  }

  double width() {
    return scale * number(svg, "width");
  }

  double height() {
    return scale * number(svg, "height");
  }

  /** Draws it with its upper left corner at a point. */
  void draw(PdfPaper paper, double left, double top) {
    for (Node at = svg.getFirstChild(); at != null; at = at.getNextSibling()) {
      if (at instanceof Element part) {
        draw(paper, part, left, top);
      }
    }
  }

  private void draw(PdfPaper paper, Element part, double left, double top) {
    switch (part.getTagName()) {
      case "line" -> line(paper, part, left, top);
      case "rect" ->
          paper.box(
              left + at(part, "x"),
              top + at(part, "y"),
              at(part, "width"),
              at(part, "height"),
              part.hasAttribute("rx") ? at(part, "rx") : 0,
              area(part));
      case "circle" -> {
        double radius = at(part, "r");
        paper.box(
            left + at(part, "cx") - radius,
            top + at(part, "cy") - radius,
            2 * radius,
            2 * radius,
            radius,
            area(part));
      }
      case "path" -> paper.corners(corners(part, left, top), area(part));
      case "text" -> text(paper, part, left, top);
      case "title" -> {
        // read aloud by browsers, not seen
      }
      default -> throw new IllegalStateException("a picture with " + part.getTagName());
    }
  }

  private static double number(Element part, String name) {
    return Double.parseDouble(part.getAttribute(name));
  }

  private double at(Element part, String name) {
    return scale * number(part, name);
  }

  private void line(PdfPaper paper, Element part, double left, double top) {
    String kind = part.getAttribute("class");
    double width = kind.equals("nut") ? 4 : kind.equals("bar") ? 1.2 : 1;
    Ink ink =
        kind.equals("nut") ? Ink.BLACK : kind.equals("bar") ? Ink.grey(0.33f) : Ink.grey(0.67f);
    paper.line(
        left + at(part, "x1"),
        top + at(part, "y1"),
        left + at(part, "x2"),
        top + at(part, "y2"),
        scale * width,
        ink);
  }

  private Area area(Element part) {
    return switch (part.getAttribute("class")) {
      case "right" -> new Area(Ink.WHITE, Ink.BLACK, scale * 1.2, 0);
      case "wrong" -> new Area(Ink.WHITE, Ink.RED, scale * 2.2, 0);
      case "leftout" -> new Area(Ink.WHITE, Ink.BLACK, scale * 1.4, scale * 3);
      case "twice", "ring" -> new Area(Ink.WHITE, Ink.BLACK, scale * 1.4, 0);
      case "band" -> new Area(Ink.grey(0.9f), Ink.WHITE, 0, 0);
      case "point" -> new Area(Ink.BLACK, Ink.BLACK, 0, 0);
      default -> PLAIN;
    };
  }

  /** The corners of a path such as "M1.0 2.0 L3.0 4.0 Z". */
  private double[] corners(Element part, double left, double top) {
    double[] units =
        Arrays.stream(part.getAttribute("d").replaceAll("[MLZ]", " ").strip().split("\\s+"))
            .mapToDouble(Double::parseDouble)
            .toArray();
    for (int i = 0; i < units.length; i++) {
      units[i] = (i % 2 == 0 ? left : top) + scale * units[i];
    }
    return units;
  }

  private void text(PdfPaper paper, Element part, double left, double top) {
    String kind = part.getAttribute("class");
    double size =
        scale * (kind.startsWith("label") ? LABEL : kind.startsWith("sign") ? SIGN : TEXT);
    boolean bad = kind.endsWith("bad");
    String text = paper.letters().known(part.getTextContent());
    double x = left + at(part, "x") - paper.letters().width(text, size) / 2;
    boolean bold = bad || kind.endsWith("strong");
    paper.text(text, x, top + at(part, "y"), size, bold, bad ? Ink.RED : Ink.BLACK);
  }
}
