package neckway.desk.open;

import java.util.ArrayList;
import java.util.List;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.SimpleDoubleProperty;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.layout.Region;
import javafx.scene.shape.Circle;
import javafx.scene.shape.Line;
import javafx.scene.text.Text;
import neckway.desk.Texts;

/**
 * Draws the landings of one join run by run, the oldest at the left: how late each came, with the
 * line above which it is not clean. A filled dot is of a clean round, a hollow one of another.
 */
final class LandingsView extends Region {
  private static final double HEIGHT_EMS = 9.5;
  private static final double WIDTH_EMS = 34;
  private static final double LEAST_STEP_EMS = 0.55;
  private static final double MOST_STEP_EMS = 2.4;

  /** What is later is drawn at the edge, times the limit. */
  private static final double MOST_LIMITS = 4;

  private final DoubleProperty em = new SimpleDoubleProperty(this, "em", 15);
  private List<LandingPoint> points = List.of();
  private double builtWidth;

  LandingsView() {
    getStyleClass().add("landings");
    setAccessibleRole(AccessibleRole.IMAGE_VIEW);
    em.addListener(o -> rebuild());
  }

  DoubleProperty em() {
    return em;
  }

  void show(List<LandingPoint> landings) {
    points = List.copyOf(landings);
    setAccessibleText(Texts.of("open.landings.name", LandingPoint.runs(points)));
    rebuild();
  }

  private void rebuild() {
    builtWidth = 0;
    requestLayout();
  }

  @Override
  protected double computePrefHeight(double width) {
    return HEIGHT_EMS * em.get();
  }

  @Override
  protected double computeMinHeight(double width) {
    return computePrefHeight(width);
  }

  @Override
  protected double computePrefWidth(double height) {
    return WIDTH_EMS * em.get();
  }

  @Override
  protected double computeMinWidth(double height) {
    return 0;
  }

  @Override
  protected void layoutChildren() {
    if (builtWidth == getWidth() || getWidth() < 40) {
      return;
    }
    builtWidth = getWidth();
    List<Node> nodes = new ArrayList<>();
    if (!points.isEmpty()) {
      draw(nodes);
    }
    getChildren().setAll(nodes);
  }

  private void draw(List<Node> nodes) {
    double e = em.get();
    double names = 5.2 * e;
    double left = names;
    double width = getWidth() - left - 0.6 * e;
    int runs = LandingPoint.runs(points);
    int shown = (int) Math.max(1, Math.min(runs, width / (LEAST_STEP_EMS * e)));
    int first = runs - shown;
    double step = Math.min(MOST_STEP_EMS * e, width / shown);
    double right = left + step * shown;
    List<LandingPoint> seen = points.stream().filter(p -> p.run() >= first).toList();
    double limit = seen.get(seen.size() - 1).limitMs();
    double high = Math.min(MOST_LIMITS * limit, most(seen, limit));
    double low = Math.max(-MOST_LIMITS * limit, least(seen, limit));
    double top = 0.8 * e;
    double bottom = HEIGHT_EMS * e - 1.9 * e;
    Scale y = new Scale(top, bottom, low, high);
    nodes.add(line(left, right, y.at(0), "zero"));
    names(nodes, y, limit, names - 0.5 * e, e);
    days(nodes, seen, first, left, step, top, bottom);
    for (int run = first; run < runs; run++) {
      limits(nodes, seen, run, left + (run - first) * step, step, y);
    }
    double radius = Math.min(0.3 * e, Math.max(2.5, 0.42 * step));
    for (LandingPoint point : seen) {
      double x = left + (point.run() - first + 0.5) * step;
      Circle dot = new Circle(x, y.at(point.lateMs()), radius);
      dot.getStyleClass().addAll("landing", point.clean() ? "clean" : "unclean");
      nodes.add(dot);
    }
    String below =
        shown < runs
            ? Texts.of("open.landings.last", shown, runs)
            : Texts.of(runs == 1 ? "open.landings.one" : "open.landings.all", runs);
    Text text = Ink.text(below, 0, HEIGHT_EMS * e - 0.8 * e, 0.9 * e, false, getWidth() - left);
    text.setX(left);
    nodes.add(text);
  }

  /** From milliseconds to pixels; what is beyond an end is drawn there. */
  private record Scale(double top, double bottom, double low, double high) {
    double at(double ms) {
      double bounded = Math.max(low, Math.min(high, ms));
      return bottom - (bottom - top) * (bounded - low) / (high - low);
    }
  }

  private static double most(List<LandingPoint> seen, double limit) {
    return Math.max(
        1.5 * limit, 1.1 * seen.stream().mapToDouble(LandingPoint::lateMs).max().orElse(0));
  }

  private static double least(List<LandingPoint> seen, double limit) {
    return Math.min(
        -0.5 * limit, 1.1 * seen.stream().mapToDouble(LandingPoint::lateMs).min().orElse(0));
  }

  private static Line line(double x1, double x2, double y, String style) {
    Line line = new Line(x1, y, x2, y);
    line.getStyleClass().add("landings-" + style);
    return line;
  }

  private static void limits(
      List<Node> nodes, List<LandingPoint> seen, int run, double x, double step, Scale y) {
    seen.stream()
        .filter(p -> p.run() == run)
        .findFirst()
        .ifPresent(p -> nodes.add(line(x, x + step, y.at(p.limitMs()), "limit")));
  }

  /** A short mark where another day begins. */
  private static void days(
      List<Node> nodes,
      List<LandingPoint> seen,
      int first,
      double left,
      double step,
      double top,
      double bottom) {
    for (int i = 1; i < seen.size(); i++) {
      if (!seen.get(i).day().equals(seen.get(i - 1).day())) {
        double x = left + (seen.get(i).run() - first) * step;
        Line day = new Line(x, bottom - 0.14 * (bottom - top), x, bottom);
        day.getStyleClass().add("landings-day");
        nodes.add(day);
      }
    }
  }

  private static void names(List<Node> nodes, Scale y, double limit, double right, double e) {
    double[] at = {0, limit};
    String[] words = {
      Texts.of("open.landings.zero"), Texts.of("open.landings.limit", Math.round(limit))
    };
    for (int i = 0; i < at.length; i++) {
      Text text = Ink.text(words[i], 0, y.at(at[i]), 0.85 * e, false, right);
      text.setX(right - text.getLayoutBounds().getWidth());
      nodes.add(text);
    }
  }
}
