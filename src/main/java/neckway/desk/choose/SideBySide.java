package neckway.desk.choose;

import javafx.scene.Node;
import javafx.scene.layout.Region;

/**
 * Two parts beside each other where there is room, else the second below the first. The second is
 * as wide as it likes to be, the first takes what is left.
 */
final class SideBySide extends Region {
  private final Region first;
  private final Region second;

  SideBySide(Region first, Region second) {
    this.first = first;
    this.second = second;
    getStyleClass().add("side-by-side");
    getChildren().addAll(first, second);
  }

  private double gap() {
    return 1.5 * javafx.scene.text.Font.getDefault().getSize();
  }

  private boolean beside(double width) {
    return width >= first.minWidth(Region.USE_COMPUTED_SIZE) + gap() + wide(second, width);
  }

  private static double wide(Node node, double width) {
    return Math.min(width, node.prefWidth(Region.USE_COMPUTED_SIZE));
  }

  @Override
  protected double computePrefHeight(double given) {
    double width = given > 0 ? given : getWidth();
    double own = wide(second, width);
    if (beside(width)) {
      return Math.max(first.prefHeight(width - gap() - own), second.prefHeight(own));
    }
    return first.prefHeight(width) + gap() + second.prefHeight(own);
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
    double width = getWidth();
    double own = wide(second, width);
    if (beside(width)) {
      first.resizeRelocate(0, 0, width - gap() - own, getHeight());
      second.resizeRelocate(width - own, 0, own, second.prefHeight(own));
    } else {
      double height = first.prefHeight(width);
      first.resizeRelocate(0, 0, width, height);
      second.resizeRelocate(0, height + gap(), own, second.prefHeight(own));
    }
  }

  @Override
  public javafx.geometry.Orientation getContentBias() {
    return javafx.geometry.Orientation.HORIZONTAL;
  }
}
