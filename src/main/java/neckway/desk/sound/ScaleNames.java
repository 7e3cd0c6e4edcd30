package neckway.desk.sound;

import javafx.geometry.Orientation;
import javafx.scene.control.Label;
import javafx.scene.layout.Region;
import javafx.scene.text.TextAlignment;

/** The names under a scale: of its two ends, and of the stretch where one wants to be. */
final class ScaleNames extends Region {
  private final Region zone = new Region();
  private final Label low;
  private final Label good;
  private final Label high;
  private final double from;
  private final double to;

  /**
   * @param from where the stretch begins, 0 to 1 of the scale
   * @param to where it ends
   */
  ScaleNames(double from, double to, String lowName, String goodName, String highName) {
    this.from = from;
    this.to = to;
    low = name(lowName);
    good = name(goodName);
    high = name(highName);
    high.setTextAlignment(TextAlignment.RIGHT);
    zone.getStyleClass().add("scale-zone");
    getStyleClass().add("scale-names");
    getChildren().addAll(zone, low, good, high);
  }

  private static Label name(String words) {
    Label name = new Label(words);
    name.getStyleClass().add("scale-name");
    name.setWrapText(true);
    return name;
  }

  private double zoneHeight() {
    return 0.5 * good.getFont().getSize();
  }

  @Override
  protected double computeMinWidth(double height) {
    return 0;
  }

  @Override
  protected double computePrefHeight(double width) {
    double third = width > 0 ? width / 3 : Double.MAX_VALUE;
    return zoneHeight()
        + Math.max(height(good, third), Math.max(height(low, third), height(high, third)));
  }

  @Override
  protected double computeMinHeight(double width) {
    return computePrefHeight(width);
  }

  /** What wraps is as high as its width asks for. */
  @Override
  public Orientation getContentBias() {
    return Orientation.HORIZONTAL;
  }

  private static double height(Label name, double most) {
    return name.prefHeight(Math.min(most, name.prefWidth(-1)));
  }

  @Override
  protected void layoutChildren() {
    double width = getWidth();
    double top = zoneHeight();
    zone.resizeRelocate(from * width, 0, (to - from) * width, top);
    double third = width / 3;
    place(low, 0, third, top);
    double own = Math.min(third, good.prefWidth(-1));
    place(
        good,
        Math.max(third, Math.min(2 * third - own, (from + to) / 2 * width - own / 2)),
        own,
        top);
    double right = Math.min(third, high.prefWidth(-1));
    place(high, width - right, right, top);
  }

  private static void place(Label name, double left, double width, double top) {
    name.resizeRelocate(left, top, width, name.prefHeight(width));
  }
}
