package neckway.desk.choose;

import java.util.List;
import java.util.function.BiConsumer;
import javafx.scene.Node;
import javafx.scene.control.Tooltip;
import javafx.scene.input.MouseButton;
import javafx.scene.shape.Polygon;
import javafx.scene.shape.QuadCurve;
import javafx.scene.text.Text;
import neckway.desk.choose.NeckPicture.Bridge;
import neckway.neck.Direction;

/**
 * Draws joins as bridges, with an arrow where one is taken.
 *
 * @param at where things are
 * @param em size of plain text, pixels
 * @param onBridge what a click does: up, or with the other button down
 */
record BridgeArt(NeckGeometry at, double em, BiConsumer<Direction, Bridge> onBridge) {
  private static final double ARC_PEAK = 0.66;
  private static final double LEAST_TEXT = 8.5;

  void add(Bridge bridge, List<Node> nodes) {
    double y = at.stringY(bridge.join().string());
    double x1 = at.fingerX(bridge.join().from());
    double x2 = at.fingerX(bridge.join().to());
    double r = at.dotRadius(bridge.join().to());
    boolean taken = !bridge.taken().isEmpty();
    double start = y - r * 0.8;
    double inset = Math.signum(x2 - x1) * r * 0.65;
    double lift = 2 * ARC_PEAK * at.gap() - r * 0.8;
    QuadCurve arc = new QuadCurve(x1 + inset, start, (x1 + x2) / 2, y - lift, x2 - inset, start);
    arc.getStyleClass().addAll("bridge", taken ? "taken" : "open", Forms.strength(bridge.inPair()));
    nodes.add(arc);
    if (bridge.taken().contains(Direction.UP)) {
      nodes.add(arrow(bridge, x2 - inset, start, x2 - inset - (x1 + x2) / 2, lift - r * 0.8));
    }
    if (bridge.taken().contains(Direction.DOWN)) {
      nodes.add(arrow(bridge, x1 + inset, start, x1 + inset - (x1 + x2) / 2, lift - r * 0.8));
    }
    QuadCurve hit =
        new QuadCurve(
            arc.getStartX(),
            arc.getStartY(),
            arc.getControlX(),
            arc.getControlY(),
            arc.getEndX(),
            arc.getEndY());
    hit.getStyleClass().add("bridge-hit");
    hit.setOnMouseClicked(
        e ->
            onBridge.accept(
                e.getButton() == MouseButton.PRIMARY ? Direction.UP : Direction.DOWN, bridge));
    Tooltip.install(hit, new Tooltip(ChoosingModel.text(bridge.join())));
    nodes.add(hit);
  }

  /** A head at a point, in the direction dx, dy. */
  private Polygon arrow(Bridge bridge, double x, double y, double dx, double dy) {
    double size = Math.max(6, at.gap() * 0.2);
    double length = Math.hypot(dx, dy);
    double ux = dx / length;
    double uy = dy / length;
    Polygon head =
        new Polygon(
            x,
            y,
            x - size * ux + size * 0.5 * uy,
            y - size * uy - size * 0.5 * ux,
            x - size * ux - size * 0.5 * uy,
            y - size * uy + size * 0.5 * ux);
    head.getStyleClass().addAll("arrow", Forms.strength(bridge.inPair()));
    return head;
  }

  void addText(Bridge bridge, List<Node> nodes) {
    if (bridge.taken().isEmpty() || !bridge.inPair()) {
      return;
    }
    double y = at.stringY(bridge.join().string()) - at.gap() * 0.4;
    double x1 = at.fingerX(bridge.join().from());
    double x2 = at.fingerX(bridge.join().to());
    double room = Math.abs(x2 - x1) - 3.1 * at.dotRadius(bridge.join().to());
    double size = Math.min(at.gap() * 0.3, em * 0.87);
    double middle = (x1 + x2) / 2;
    Text text =
        Forms.text(ChoosingModel.onBridge(bridge, false), middle, y, size, true, "bridge-text");
    if (text.getLayoutBounds().getWidth() > room) {
      text = Forms.text(ChoosingModel.onBridge(bridge, true), middle, y, size, true, "bridge-text");
    }
    Forms.shrink(text, room);
    if (text.getFont().getSize() >= LEAST_TEXT) {
      nodes.add(text);
    }
  }
}
