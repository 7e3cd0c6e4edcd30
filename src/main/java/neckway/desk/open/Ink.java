package neckway.desk.open;

import java.util.List;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.shape.Line;
import javafx.scene.shape.Polygon;
import javafx.scene.shape.Rectangle;
import javafx.scene.text.Text;
import neckway.desk.Type;
import neckway.practice.State;

/** How a state looks as a line and as a frame; the style sheet has hues, widths and dashes. */
final class Ink {
  private static final double HALF_DOUBLE = 2.2;

  private Ink() {}

  /** The style class of a state. */
  static String style(State state) {
    return "state-" + state.word();
  }

  /** A line across: dotted, single, double or broken. */
  static void line(List<Node> nodes, State state, double x1, double x2, double y) {
    double[] offsets =
        state == State.OPEN ? new double[] {-HALF_DOUBLE, HALF_DOUBLE} : new double[1];
    for (double offset : offsets) {
      Line line = new Line(x1, y + offset, x2, y + offset);
      line.getStyleClass().addAll("strand", style(state));
      line.setMouseTransparent(true);
      nodes.add(line);
    }
  }

  /** A frame: dotted, single, double or broken. */
  static void frame(List<Node> nodes, State state, double x, double y, double w, double h) {
    nodes.add(rectangle(state, x, y, w, h));
    if (state == State.OPEN) {
      double in = 2 * HALF_DOUBLE;
      nodes.add(rectangle(state, x + in, y + in, w - 2 * in, h - 2 * in));
    }
  }

  private static Rectangle rectangle(State state, double x, double y, double w, double h) {
    Rectangle frame = new Rectangle(x, y, w, h);
    frame.setArcWidth(8);
    frame.setArcHeight(8);
    frame.setMouseTransparent(true);
    frame.getStyleClass().addAll("stand", style(state));
    return frame;
  }

  /** The head of an arrow at a point; to the right or left. */
  static Polygon head(State state, double x, double y, double size, boolean right) {
    double back = right ? x - size : x + size;
    Polygon head = new Polygon(x, y, back, y - size * 0.55, back, y + size * 0.55);
    head.setMouseTransparent(true);
    head.getStyleClass().addAll("strand-head", style(state));
    return head;
  }

  /** Words about a point, made smaller until they fit a width. */
  static Text text(String words, double x, double y, double size, boolean bold, double width) {
    Text text = plain(words, y, size, bold);
    double own = text.getLayoutBounds().getWidth();
    if (own > width) {
      text = plain(words, y, size * width / own, bold);
    }
    text.setX(x - text.getLayoutBounds().getWidth() / 2);
    return text;
  }

  private static Text plain(String words, double y, double size, boolean bold) {
    Text text = new Text(words);
    text.setFont(Type.of(bold, size));
    text.setTextOrigin(VPos.CENTER);
    text.setY(y);
    text.setMouseTransparent(true);
    text.getStyleClass().add("map-text");
    return text;
  }
}
