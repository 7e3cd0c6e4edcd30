package neckway.desk;

import javafx.scene.Node;
import javafx.scene.layout.Region;

/**
 * Two parts beside each other where there is room, else the second below the first. The second is
 * as wide as it likes to be, the first takes what is left.
 */
public final class SideBySide extends Region {
  private final Region first;
  private final Region second;

  public SideBySide(Region first, Region second) {
    this.first = first;
    this.second = second;
    getStyleClass().add("side-by-side");
    getChildren().addAll(first, second);
  }

  private double gap() {
    return 1.5 * javafx.scene.text.Font.getDefault().getSize();
  }

  private double inside(double width) {
    return width - getInsets().getLeft() - getInsets().getRight();
  }

  private boolean beside(double width) {
    return width >= first.minWidth(Region.USE_COMPUTED_SIZE) + gap() + wide(second, width);
  }

  private static double wide(Node node, double width) {
    return Math.min(width, node.prefWidth(Region.USE_COMPUTED_SIZE));
  }

  @Override
  protected double computePrefHeight(double given) {
    double width = inside(given > 0 ? given : getWidth());
    double own = wide(second, width);
    double around = getInsets().getTop() + getInsets().getBottom();
    if (beside(width)) {
      return around + Math.max(first.prefHeight(width - gap() - own), second.prefHeight(own));
    }
    return around + first.prefHeight(width) + gap() + second.prefHeight(own);
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
    double width = inside(getWidth());
    double left = getInsets().getLeft();
    double top = getInsets().getTop();
    double own = wide(second, width);
    if (beside(width)) {
      double room = width - gap() - own;
      first.resizeRelocate(left, top, room, first.prefHeight(room));
      second.resizeRelocate(left + width - own, top, own, second.prefHeight(own));
    } else {
      double height = first.prefHeight(width);
      first.resizeRelocate(left, top, width, height);
      second.resizeRelocate(left, top + height + gap(), own, second.prefHeight(own));
    }
  }

  @Override
  public javafx.geometry.Orientation getContentBias() {
    return javafx.geometry.Orientation.HORIZONTAL;
  }
}
