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
    form.getStyleClass().addAll("dot", side, on ? "sounding" : "silent");
    nodes.add(form);
    double size = r * (dot.label().length() > 2 ? 0.92 : dot.label().length() == 2 ? 1.05 : 1.2);
    nodes.add(
        Forms.text(dot.label(), x, y, size, true, "dot-text", side, on ? "sounding" : "silent"));
  }
}
