package neckway.desk.choose;

import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.shape.Circle;
import javafx.scene.shape.Rectangle;
import javafx.scene.shape.Shape;
import neckway.desk.choose.NeckPicture.Dot;
import neckway.desk.choose.NeckPicture.Side;
import neckway.neck.Place;

/**
 * Draws notes: round in the lower of two stands, square in the upper one, long where both share it.
 *
 * @param at where things are
 * @param sounding the place that sounds now
 */
record DotArt(NeckGeometry at, Optional<Place> sounding) {
  void add(Dot dot, List<Node> nodes) {
    if (dot.place().fret() > 0
        && (dot.place().fret() <= at.firstLine() || dot.place().fret() > at.lastLine())) {
      return;
    }
    double x = at.fingerX(dot.place().fret());
    double y = at.stringY(dot.place().string());
    double r = at.dotRadius(dot.place().fret());
    Shape form;
    if (dot.side().isEmpty()) {
      double half =
          Math.min(r * 1.45, dot.place().fret() == 0 ? r : at.fretWidth(dot.place().fret()) * 0.47);
      Rectangle pill = new Rectangle(x - half, y - r, 2 * half, 2 * r);
      pill.setArcWidth(2 * r);
      pill.setArcHeight(2 * r);
      form = pill;
    } else if (dot.side().get() == Side.LOWER) {
      form = new Circle(x, y, r);
    } else {
      Rectangle square = new Rectangle(x - r * 0.92, y - r * 0.92, r * 1.84, r * 1.84);
      square.setArcWidth(r * 0.5);
      square.setArcHeight(r * 0.5);
      form = square;
    }
    String side = dot.side().map(Forms::word).orElse("both");
    boolean on = sounding.filter(place -> place.equals(dot.place())).isPresent();
    String strength = Forms.strength(dot.inPair());
    form.getStyleClass().addAll("dot", side, on ? "sounding" : "silent", strength);
    if (dot.tonic()) {
      nodes.add(ring(x, y, form, dot, strength));
    }
    nodes.add(form);
    double size = r * (dot.label().length() > 2 ? 0.92 : dot.label().length() == 2 ? 1.05 : 1.2);
    nodes.add(
        Forms.text(
            dot.label(), x, y, size, true, "dot-text", side, on ? "sounding" : "silent", strength));
  }

  /** A second line around the root, of the same form. */
  private Shape ring(double x, double y, Shape form, Dot dot, String strength) {
    double air = Math.max(3, 0.28 * at.dotRadius(dot.place().fret()));
    double halfWide = form.getLayoutBounds().getWidth() / 2 - form.getStrokeWidth() / 2 + air;
    double halfTall = form.getLayoutBounds().getHeight() / 2 - form.getStrokeWidth() / 2 + air;
    Rectangle ring = new Rectangle(x - halfWide, y - halfTall, 2 * halfWide, 2 * halfTall);
    boolean square = dot.side().filter(side -> side == Side.UPPER).isPresent();
    double arc = square ? 0.6 * halfTall : 2 * halfTall;
    ring.setArcWidth(arc);
    ring.setArcHeight(arc);
    ring.getStyleClass().addAll("root-ring", dot.side().map(Forms::word).orElse("both"), strength);
    return ring;
  }
}
