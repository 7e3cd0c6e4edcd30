package neckway.desk.open;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.SimpleDoubleProperty;
import javafx.geometry.Orientation;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.Region;
import javafx.scene.shape.Rectangle;
import javafx.scene.text.Text;
import neckway.desk.DrillWords;
import neckway.desk.LookModel;
import neckway.desk.Texts;
import neckway.desk.open.OpenMap.Bridge;
import neckway.desk.open.OpenMap.Column;
import neckway.desk.open.OpenMap.Spot;
import neckway.desk.open.OpenMap.Stand;
import neckway.neck.Direction;
import neckway.practice.Exercise;
import neckway.practice.Progress;

/**
 * Draws the stands of the hand along the neck, and each way over a bridge as a line from one to the
 * other, the ways up above the ways down. Where there is no room for all beside each other, they go
 * on below, and the stand at the end of a row stands again at the beginning of the next one.
 */
final class StandsView extends Region {
  private static final double STAND_EMS = 6.3;
  private static final double BRIDGE_EMS = 6.5;
  private static final double STRAND_EMS = 1.25;
  private static final double MOST_STRAND = 34;
  private static final double TITLE_EMS = 1.5;
  private static final double ROW_GAP_EMS = 0.9;
  private static final double EDGE = 4;

  private final OpenModel model;
  private final LookModel look;
  private final DoubleProperty em = new SimpleDoubleProperty(this, "em", 15);
  private final Map<Spot, List<Rectangle>> spots = new HashMap<>();
  private Runnable keyed = () -> {};
  private double builtWidth;

  StandsView(OpenModel model, LookModel look) {
    this.model = model;
    this.look = look;
    getStyleClass().add("stands");
    setFocusTraversable(true);
    setAccessibleRole(AccessibleRole.IMAGE_VIEW);
    model.map().addListener(o -> rebuild());
    model.spot().addListener(o -> mark());
    em.addListener(o -> rebuild());
    look.leftHanded().addListener(o -> rebuild());
    setOnKeyPressed(this::key);
    setOnMousePressed(e -> requestFocus());
  }

  /** Size of plain text, pixels. */
  DoubleProperty em() {
    return em;
  }

  private void key(KeyEvent event) {
    if (event.isShortcutDown() || event.isAltDown()) {
      return;
    }
    int on = look.leftHanded().get() ? -1 : 1;
    KeyCode code = event.getCode();
    switch (code) {
      case LEFT -> model.pointBy(-on, 0);
      case RIGHT -> model.pointBy(on, 0);
      case UP -> model.pointBy(0, -1);
      case DOWN -> model.pointBy(0, 1);
      case ENTER -> model.playPointed();
      default -> {
        return;
      }
    }
    event.consume();
    keyed.run();
  }

  /** Told when a key has pointed at something. */
  void onKeyed(Runnable told) {
    keyed = told;
  }

  private void rebuild() {
    builtWidth = 0;
    requestLayout();
  }

  private double strand() {
    return Math.min(MOST_STRAND, STRAND_EMS * em.get());
  }

  private double text() {
    return Math.min(em.get(), strand() * 0.85);
  }

  private int strings() {
    return columns().stream()
        .filter(c -> c instanceof Bridge)
        .mapToInt(c -> Math.max(((Bridge) c).up().size(), ((Bridge) c).down().size()))
        .max()
        .orElse(0);
  }

  private List<Column> columns() {
    return model.map().get().map(OpenMap::columns).orElse(List.of());
  }

  private double panel() {
    return TITLE_EMS * text() + strings() * strand();
  }

  private double rowHeight() {
    return 2 * panel() + 0.4 * em.get();
  }

  /** Which columns stand in which row; a stand between two rows is in both. */
  private List<List<Integer>> rows(double width) {
    List<Column> columns = columns();
    double stand = STAND_EMS * em.get();
    int fit = (int) Math.max(1, (width - 2 * EDGE - stand) / (stand + BRIDGE_EMS * em.get()));
    int bridges = (int) columns.stream().filter(c -> c instanceof Bridge).count();
    int rowsNeeded = Math.max(1, (bridges + fit - 1) / fit);
    int inRow = (bridges + rowsNeeded - 1) / rowsNeeded;
    List<List<Integer>> rows = new ArrayList<>();
    List<Integer> row = new ArrayList<>();
    int taken = 0;
    for (int i = 0; i < columns.size(); i++) {
      boolean gap = i > 0 && columns.get(i) instanceof Stand && columns.get(i - 1) instanceof Stand;
      if (gap || columns.get(i) instanceof Bridge && taken == inRow) {
        rows.add(row);
        row = new ArrayList<>(gap ? List.of() : List.of(i - 1));
        taken = 0;
      }
      taken += columns.get(i) instanceof Bridge ? 1 : 0;
      row.add(i);
    }
    rows.add(row);
    return rows;
  }

  @Override
  public Orientation getContentBias() {
    return Orientation.HORIZONTAL;
  }

  @Override
  protected double computePrefHeight(double width) {
    int rows = rows(width > 0 ? width : Math.max(getWidth(), 1)).size();
    return 2 * EDGE + rows * rowHeight() + (rows - 1) * ROW_GAP_EMS * em.get();
  }

  @Override
  protected double computeMinHeight(double width) {
    return computePrefHeight(width);
  }

  @Override
  protected double computeMinWidth(double height) {
    return 0;
  }

  @Override
  protected void layoutChildren() {
    if (builtWidth == getWidth() || getWidth() < 50 || columns().isEmpty()) {
      return;
    }
    builtWidth = getWidth();
    spots.clear();
    List<Node> nodes = new ArrayList<>();
    double y = EDGE;
    for (List<Integer> row : rows(getWidth())) {
      row(row, y, nodes);
      y += rowHeight() + ROW_GAP_EMS * em.get();
    }
    getChildren().setAll(nodes);
    mark();
  }

  private void row(List<Integer> row, double y, List<Node> nodes) {
    double stand = Math.min(STAND_EMS * em.get(), getWidth() * 0.36);
    long bridges = row.stream().filter(i -> columns().get(i) instanceof Bridge).count();
    double room = getWidth() - 2 * EDGE - (row.size() - bridges) * stand;
    double bridge = bridges == 0 ? 0 : Math.min(room / bridges, 2.2 * BRIDGE_EMS * em.get());
    double x = EDGE;
    for (int column : row) {
      double width = columns().get(column) instanceof Bridge ? bridge : stand;
      double left = look.leftHanded().get() ? getWidth() - x - width : x;
      if (columns().get(column) instanceof Bridge there) {
        bridge(there, column, left, y, width, nodes);
      } else {
        stand((Stand) columns().get(column), column, left, y, width, nodes);
      }
      x += width;
    }
  }

  private void stand(Stand stand, int column, double x, double y, double w, List<Node> nodes) {
    double top = y + TITLE_EMS * text();
    double h = rowHeight() - TITLE_EMS * text();
    spot(new Spot(column, 0), stand.progress(), x, top, w, h, nodes);
    Ink.frame(nodes, stand.progress().state(), x + 2, top + 2, w - 4, h - 4);
    double middle = x + w / 2;
    double fits = w - 16;
    double size = text();
    double line = Math.min(1.5 * size, h / 7);
    double at = top + h / 2 - 1.9 * line;
    String[] lines = {
      Texts.of("open.stand.name", DrillWords.name(stand.placed().shape())),
      Texts.of("open.stand.frets", stand.from(), stand.to()),
      OpenWords.state(stand.progress().state())
    };
    nodes.add(
        Ink.text(
            Integer.toString(stand.placed().shape().number()), middle, at, 1.9 * size, true, fits));
    at += 1.5 * line;
    for (String words : lines) {
      Text text = Ink.text(words, middle, at, size, false, fits);
      nodes.add(text);
      at += line;
    }
  }

  private void bridge(Bridge bridge, int column, double x, double y, double w, List<Node> nodes) {
    ways(bridge.up(), Direction.UP, column, 0, x, y, w, nodes);
    double below = y + panel() + 0.4 * em.get();
    ways(bridge.down(), Direction.DOWN, column, bridge.up().size(), x, below, w, nodes);
  }

  private void ways(
      List<Progress> ways,
      Direction direction,
      int column,
      int firstRow,
      double x,
      double y,
      double w,
      List<Node> nodes) {
    boolean right = (direction == Direction.UP) != look.leftHanded().get();
    double size = text();
    nodes.add(
        Ink.text(
            Texts.of(direction == Direction.UP ? "open.up" : "open.down"),
            x + w / 2,
            y + TITLE_EMS * size / 2,
            size * 0.92,
            false,
            w - 6));
    for (int i = 0; i < ways.size(); i++) {
      Progress way = ways.get(i);
      double top = y + TITLE_EMS * size + i * strand();
      double middle = top + strand() / 2;
      spot(new Spot(column, firstRow + i), way, x + 3, top, w - 6, strand(), nodes);
      String string = Integer.toString(((Exercise.OfJoin) way.exercise()).string());
      double from = x + 8 + size;
      double to = x + w - 8;
      nodes.add(Ink.text(string, x + 8 + size * 0.35, middle, size * 0.85, false, size));
      double head = 0.36 * strand();
      Ink.line(nodes, way.state(), right ? from : from + head, right ? to - head : to, middle);
      nodes.add(Ink.head(way.state(), right ? to + 2 : from - 2, middle, head, right));
    }
  }

  /** The room in which something is pointed at. */
  private void spot(
      Spot spot, Progress progress, double x, double y, double w, double h, List<Node> nodes) {
    Rectangle room = new Rectangle(x, y, w, h);
    room.setArcWidth(6);
    room.setArcHeight(6);
    room.getStyleClass().add("spot");
    room.setOnMouseMoved(e -> model.point(spot));
    room.setOnMouseClicked(e -> model.point(spot));
    spots.computeIfAbsent(spot, s -> new ArrayList<>()).add(room);
    nodes.add(room);
  }

  private void mark() {
    spots.values().forEach(rooms -> rooms.forEach(r -> r.getStyleClass().remove("pointed-at")));
    Optional<Spot> now = model.spot().get();
    now.map(spots::get).ifPresent(rooms -> rooms.forEach(r -> r.getStyleClass().add("pointed-at")));
  }

  /** Where something is drawn. */
  Optional<Rectangle> room(Spot spot) {
    return Optional.ofNullable(spots.get(spot)).map(rooms -> rooms.get(0));
  }
}
