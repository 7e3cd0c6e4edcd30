package neckway.desk.choose;

import java.util.List;
import javafx.scene.Node;
import javafx.scene.shape.Circle;
import javafx.scene.shape.Line;
import javafx.scene.shape.Rectangle;
import neckway.desk.choose.NeckPicture.Window;
import neckway.neck.GuitarString;

/**
 * Draws strings, frets, inlays and numbers, and the hand's windows beneath.
 *
 * @param at where things are
 * @param nameX where the strings' names are
 * @param numberEm size of names and numbers, pixels
 */
record WoodArt(NeckGeometry at, double nameX, double numberEm) {
  private static final int[] INLAYS = {3, 5, 7, 9, 12, 15, 17, 19, 21, 24};

  void addWindows(NeckPicture p, List<Node> nodes) {
    double pad = at.gap() * 0.44;
    for (Window window : p.windows()) {
      double y1 = at.stringY(window.lowest());
      double y2 = at.stringY(window.highest());
      int last = Math.min(window.lastFret(), p.lastLine());
      double x1 = at.lineX(Math.max(window.hand() - 1, p.firstLine()));
      double x2 = at.lineX(last);
      Rectangle r =
          new Rectangle(
              Math.min(x1, x2) + 1.5,
              Math.min(y1, y2) - pad,
              Math.abs(x2 - x1) - 3,
              Math.abs(y2 - y1) + 2 * pad);
      r.setArcWidth(at.gap() * 0.5);
      r.setArcHeight(at.gap() * 0.5);
      r.getStyleClass()
          .addAll("window", Forms.word(window.side()), Forms.strength(window.inPair()));
      nodes.add(r);
    }
  }

  void addWood(NeckPicture p, List<Node> nodes) {
    double top = at.top();
    double bottom = at.bottom();
    for (int fret = p.firstLine(); fret <= p.lastLine(); fret++) {
      Line wire =
          Forms.line(at.lineX(fret), top, at.lineX(fret), bottom, fret == 0 ? "nut" : "wire");
      nodes.add(wire);
    }
    for (GuitarString string : p.tuning().strings()) {
      double y = at.stringY(string);
      Line line = Forms.line(at.lineX(p.firstLine()), y, at.lineX(p.lastLine()), y, "string");
      line.setStrokeWidth(0.8 + 0.28 * (string.number() - 1));
      nodes.add(line);
      String name = p.tuning().lowToHigh().get(p.tuning().count() - string.number()).note();
      nodes.add(Forms.text(name, nameX, y, numberEm, false, "neck-text"));
    }
    for (int inlay : INLAYS) {
      if (inlay > p.firstLine() && inlay <= p.lastLine()) {
        double y = bottom + at.gap() * 0.5 + numberEm * 0.75;
        boolean played =
            p.windows().stream().anyMatch(w -> w.hand() <= inlay && inlay <= w.lastFret());
        nodes.add(
            Forms.text(
                Integer.toString(inlay), at.fingerX(inlay), y, numberEm, played, "neck-text"));
        double middle = (top + bottom) / 2;
        for (double dy : inlay % 12 == 0 ? new double[] {-at.gap(), at.gap()} : new double[] {0}) {
          Circle c = new Circle(at.fingerX(inlay), middle + dy, Math.min(4.5, at.gap() * 0.1));
          c.getStyleClass().add("inlay");
          nodes.add(0, c);
        }
      }
    }
  }
}
