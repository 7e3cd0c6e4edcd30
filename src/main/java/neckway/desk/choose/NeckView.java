package neckway.desk.choose;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleDoubleProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.geometry.VPos;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.Tooltip;
import javafx.scene.input.MouseButton;
import javafx.scene.layout.Region;
import javafx.scene.shape.Circle;
import javafx.scene.shape.Line;
import javafx.scene.shape.Polygon;
import javafx.scene.shape.QuadCurve;
import javafx.scene.shape.Rectangle;
import javafx.scene.shape.Shape;
import javafx.scene.text.Font;
import javafx.scene.text.FontWeight;
import javafx.scene.text.Text;
import neckway.desk.LookModel;
import neckway.desk.Texts;
import neckway.desk.choose.NeckPicture.Bridge;
import neckway.desk.choose.NeckPicture.Dot;
import neckway.desk.choose.NeckPicture.Mark;
import neckway.desk.choose.NeckPicture.Side;
import neckway.desk.choose.NeckPicture.Window;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.Place;

/**
 * A neck: strings, frets in their true places, the hand in its stands, notes and bridges. Above it
 * the stands that could be chosen. Colours come from the style sheet.
 */
public final class NeckView extends Region {
  private static final String FAMILY = "DejaVu Sans";
  private static final int[] INLAYS = {3, 5, 7, 9, 12, 15, 17, 19, 21, 24};
  private static final double ARC_PEAK = 0.66;
  private static final double LEAST_BRIDGE_TEXT = 8.5;
  private static final double MOST_GAP = 64;

  private final ObjectProperty<NeckPicture> picture = new SimpleObjectProperty<>(this, "picture");
  private final ObjectProperty<Optional<Place>> sounding =
      new SimpleObjectProperty<>(this, "sounding", Optional.empty());
  private final DoubleProperty em = new SimpleDoubleProperty(this, "em", 15);
  private final LookModel look;
  private BiConsumer<Direction, Bridge> onBridge = (direction, bridge) -> {};
  private Consumer<Mark> onMark = mark -> {};
  private boolean marksShown;
  private NeckGeometry at;
  private double builtWidth;
  private double builtHeight;

  public NeckView(LookModel look) {
    this.look = look;
    getStyleClass().add("neck");
    setAccessibleRole(AccessibleRole.IMAGE_VIEW);
    picture.addListener(o -> rebuild());
    sounding.addListener(o -> rebuild());
    em.addListener(o -> rebuild());
    look.leftHanded().addListener(o -> rebuild());
    look.lowStringOnTop().addListener(o -> rebuild());
  }

  /** What is on the neck. */
  public ObjectProperty<NeckPicture> picture() {
    return picture;
  }

  /** The place that sounds now, if one does. */
  public ObjectProperty<Optional<Place>> sounding() {
    return sounding;
  }

  /** Whether the nut is on the right. */
  boolean leftHanded() {
    return look.leftHanded().get();
  }

  /** Size of plain text, pixels. */
  public DoubleProperty em() {
    return em;
  }

  /** What a click on a bridge does: up, or with the other button down. */
  public void onBridge(BiConsumer<Direction, Bridge> action) {
    onBridge = action;
  }

  /** Shows the stands that could be chosen, and what a click on one does. */
  public void onMark(Consumer<Mark> action) {
    onMark = action;
    marksShown = true;
  }

  private void rebuild() {
    builtWidth = 0;
    requestLayout();
  }

  private double gap() {
    return Math.max(30, Math.min(MOST_GAP, 2.7 * em.get()));
  }

  private int strings() {
    return picture.get() == null ? 6 : picture.get().tuning().count();
  }

  private List<List<Mark>> lanes() {
    List<List<Mark>> lanes = new ArrayList<>();
    if (!marksShown || picture.get() == null) {
      return lanes;
    }
    for (Mark mark : picture.get().marks()) {
      List<Mark> free =
          lanes.stream()
              .filter(lane -> lane.get(lane.size() - 1).to() < mark.from())
              .findFirst()
              .orElse(null);
      if (free == null) {
        free = new ArrayList<>();
        lanes.add(free);
      }
      free.add(mark);
    }
    return lanes;
  }

  private double laneHeight() {
    return 1.75 * Math.min(em.get(), 24);
  }

  private double numberEm() {
    return Math.min(em.get(), 24) * 0.87;
  }

  @Override
  protected double computePrefHeight(double width) {
    return lanes().size() * laneHeight() + gap() * (strings() + 0.15) + 2.2 * numberEm();
  }

  @Override
  protected double computeMinHeight(double width) {
    return computePrefHeight(width);
  }

  @Override
  protected double computeMinWidth(double height) {
    return 400;
  }

  @Override
  protected void layoutChildren() {
    if (picture.get() == null || getWidth() < 50) {
      return;
    }
    if (builtWidth == getWidth() && builtHeight == getHeight()) {
      return;
    }
    builtWidth = getWidth();
    builtHeight = getHeight();
    NeckPicture p = picture.get();
    double names = 1.9 * em.get();
    double marksHeight = lanes().size() * laneHeight();
    at =
        new NeckGeometry(
            look.leftHanded().get() ? 0.6 * em.get() : names,
            getWidth() - names - 0.6 * em.get(),
            marksHeight + gap() * 0.62,
            gap(),
            p.tuning().count(),
            p.firstLine(),
            p.lastLine(),
            look.leftHanded().get(),
            look.lowStringOnTop().get());
    List<Node> nodes = new ArrayList<>();
    addWindows(p, nodes);
    addWood(p, nodes);
    addMarks(nodes);
    p.bridges().forEach(bridge -> addBridge(bridge, nodes));
    p.dots().forEach(dot -> addDot(dot, nodes));
    p.bridges().forEach(bridge -> addBridgeText(bridge, nodes));
    getChildren().setAll(nodes);
  }

  private void addWindows(NeckPicture p, List<Node> nodes) {
    double pad = gap() * 0.44;
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
      r.setArcWidth(gap() * 0.5);
      r.setArcHeight(gap() * 0.5);
      r.getStyleClass().addAll("window", word(window.side()));
      nodes.add(r);
    }
  }

  private void addWood(NeckPicture p, List<Node> nodes) {
    double top = at.top();
    double bottom = at.bottom();
    for (int fret = p.firstLine(); fret <= p.lastLine(); fret++) {
      Line wire = line(at.lineX(fret), top, at.lineX(fret), bottom, fret == 0 ? "nut" : "wire");
      nodes.add(wire);
    }
    for (GuitarString string : p.tuning().strings()) {
      double y = at.stringY(string);
      Line line = line(at.lineX(p.firstLine()), y, at.lineX(p.lastLine()), y, "string");
      line.setStrokeWidth(0.8 + 0.28 * (string.number() - 1));
      nodes.add(line);
      double x = look.leftHanded().get() ? getWidth() - 0.5 * em.get() : 0.5 * em.get();
      String name = p.tuning().lowToHigh().get(p.tuning().count() - string.number()).note();
      nodes.add(text(name, x, y, numberEm(), false, "neck-text"));
    }
    for (int inlay : INLAYS) {
      if (inlay > p.firstLine() && inlay <= p.lastLine()) {
        double y = bottom + gap() * 0.5 + numberEm() * 0.75;
        boolean played =
            p.windows().stream().anyMatch(w -> w.hand() <= inlay && inlay <= w.lastFret());
        nodes.add(
            text(Integer.toString(inlay), at.fingerX(inlay), y, numberEm(), played, "neck-text"));
        double middle = (top + bottom) / 2;
        for (double dy : inlay % 12 == 0 ? new double[] {-gap(), gap()} : new double[] {0}) {
          Circle c = new Circle(at.fingerX(inlay), middle + dy, Math.min(4.5, gap() * 0.1));
          c.getStyleClass().add("inlay");
          nodes.add(0, c);
        }
      }
    }
  }

  private void addMarks(List<Node> nodes) {
    List<List<Mark>> lanes = lanes();
    for (int lane = 0; lane < lanes.size(); lane++) {
      for (Mark mark : lanes.get(lane)) {
        double x1 = at.lineX(mark.from() - 1);
        double x2 = at.lineX(mark.to());
        double left = Math.min(x1, x2) + 2;
        double width = Math.abs(x2 - x1) - 4;
        double y = lane * laneHeight();
        String[] style = {"mark", mark.chosen().map(NeckView::word).orElse("other")};
        Line under =
            line(left, y + laneHeight() * 0.82, left + width, y + laneHeight() * 0.82, style);
        Text name =
            text(
                words(mark, width),
                left + width / 2,
                y + laneHeight() * 0.4,
                Math.min(em.get(), 24) * 0.92,
                mark.chosen().isPresent(),
                "mark-text",
                style[1]);
        shrink(name, width);
        Rectangle hit = new Rectangle(left, y, width, laneHeight());
        hit.getStyleClass().add("hit");
        hit.setOnMouseClicked(e -> onMark.accept(mark));
        nodes.addAll(List.of(under, name, hit));
      }
    }
  }

  private String words(Mark mark, double width) {
    String name = mark.shape().spoken();
    if (mark.chosen().isEmpty()) {
      return name;
    }
    String hands =
        mark.hands().stream()
            .map(String::valueOf)
            .collect(Collectors.joining(" " + Texts.of("mark.then") + " "));
    String all = Texts.of("mark.chosen", name, hands);
    return all.length() * em.get() * 0.65 < width ? all : name;
  }

  private double radius(int fret) {
    double room = fret == 0 ? gap() : at.fretWidth(fret);
    return Math.max(5, Math.min(gap() * 0.3, room * 0.44));
  }

  private void addDot(Dot dot, List<Node> nodes) {
    if (dot.place().fret() > 0
        && (dot.place().fret() <= at.firstLine() || dot.place().fret() > at.lastLine())) {
      return;
    }
    double x = at.fingerX(dot.place().fret());
    double y = at.stringY(dot.place().string());
    double r = radius(dot.place().fret());
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
    String side = dot.side().map(NeckView::word).orElse("both");
    boolean on = sounding.get().filter(place -> place.equals(dot.place())).isPresent();
    form.getStyleClass().addAll("dot", side, on ? "sounding" : "silent");
    nodes.add(form);
    double size = r * (dot.label().length() > 2 ? 0.92 : dot.label().length() == 2 ? 1.05 : 1.2);
    nodes.add(text(dot.label(), x, y, size, true, "dot-text", side, on ? "sounding" : "silent"));
  }

  private void addBridge(Bridge bridge, List<Node> nodes) {
    double y = at.stringY(bridge.join().string());
    double x1 = at.fingerX(bridge.join().from());
    double x2 = at.fingerX(bridge.join().to());
    double r = radius(bridge.join().to());
    boolean taken = !bridge.taken().isEmpty();
    double start = y - r * 0.8;
    double inset = Math.signum(x2 - x1) * r * 0.65;
    double lift = 2 * ARC_PEAK * gap() - r * 0.8;
    QuadCurve arc = new QuadCurve(x1 + inset, start, (x1 + x2) / 2, y - lift, x2 - inset, start);
    arc.getStyleClass().addAll("bridge", taken ? "taken" : "open");
    nodes.add(arc);
    if (bridge.taken().contains(Direction.UP)) {
      nodes.add(arrow(x2 - inset, start, x2 - inset - (x1 + x2) / 2, lift - r * 0.8));
    }
    if (bridge.taken().contains(Direction.DOWN)) {
      nodes.add(arrow(x1 + inset, start, x1 + inset - (x1 + x2) / 2, lift - r * 0.8));
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
  private Polygon arrow(double x, double y, double dx, double dy) {
    double size = Math.max(6, gap() * 0.2);
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
    head.getStyleClass().add("arrow");
    return head;
  }

  private void addBridgeText(Bridge bridge, List<Node> nodes) {
    if (bridge.taken().isEmpty()) {
      return;
    }
    double y = at.stringY(bridge.join().string()) - gap() * 0.4;
    double x1 = at.fingerX(bridge.join().from());
    double x2 = at.fingerX(bridge.join().to());
    double room = Math.abs(x2 - x1) - 3.1 * radius(bridge.join().to());
    double size = Math.min(gap() * 0.3, em.get() * 0.87);
    double middle = (x1 + x2) / 2;
    Text text = text(ChoosingModel.onBridge(bridge, false), middle, y, size, true, "bridge-text");
    if (text.getLayoutBounds().getWidth() > room) {
      text = text(ChoosingModel.onBridge(bridge, true), middle, y, size, true, "bridge-text");
    }
    shrink(text, room);
    if (text.getFont().getSize() >= LEAST_BRIDGE_TEXT) {
      nodes.add(text);
    }
  }

  private static Line line(double x1, double y1, double x2, double y2, String... styles) {
    Line line = new Line(x1, y1, x2, y2);
    line.getStyleClass().addAll(styles);
    return line;
  }

  private static Text text(
      String words, double x, double y, double size, boolean bold, String... styles) {
    Text text = new Text(words);
    text.setFont(Font.font(FAMILY, bold ? FontWeight.BOLD : FontWeight.NORMAL, size));
    text.setTextOrigin(VPos.CENTER);
    text.setX(x - text.getLayoutBounds().getWidth() / 2);
    text.setY(y);
    text.setMouseTransparent(true);
    text.getStyleClass().addAll(styles);
    return text;
  }

  private static void shrink(Text text, double width) {
    double own = text.getLayoutBounds().getWidth();
    if (own > width) {
      double middle = text.getX() + own / 2;
      Font font = text.getFont();
      boolean bold = font.getStyle().contains("Bold");
      text.setFont(
          Font.font(
              FAMILY, bold ? FontWeight.BOLD : FontWeight.NORMAL, font.getSize() * width / own));
      text.setX(middle - text.getLayoutBounds().getWidth() / 2);
    }
  }

  private static String word(Side side) {
    return side == Side.LOWER ? "lower" : "upper";
  }
}
