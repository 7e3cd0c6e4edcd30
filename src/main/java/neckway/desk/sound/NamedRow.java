package neckway.desk.sound;

import javafx.geometry.Orientation;
import javafx.scene.control.Label;
import javafx.scene.layout.Region;
import javafx.scene.text.Font;

/**
 * A name, what it names, and a small thing after that: on one line where there is room, else the
 * name above. What is named takes the width that is left.
 */
final class NamedRow extends Region {
  private static final double GAP_EM = 0.8;
  private static final double LEAST_EM = 9;

  private final Label name;
  private final Region named;
  private final Region after;

  /** Nothing stands after what is named where {@code after} is an empty region. */
  NamedRow(Label name, Region named, Region after) {
    this.name = name;
    this.named = named;
    this.after = after;
    named.setMinWidth(0);
    getStyleClass().add("named-row");
    getChildren().addAll(name, named, after);
  }

  private double em() {
    Font font = name.getFont();
    return font.getSize();
  }

  private double afterWidth() {
    double own = after.prefWidth(USE_COMPUTED_SIZE);
    return own > 0 ? own + GAP_EM * em() : 0;
  }

  private double nameWidth() {
    return Math.max(name.prefWidth(USE_COMPUTED_SIZE), name.minWidth(USE_COMPUTED_SIZE));
  }

  private boolean onOneLine(double width) {
    return width >= nameWidth() + GAP_EM * em() + LEAST_EM * em() + afterWidth();
  }

  private double namedWidth(double width) {
    double taken = afterWidth() + (onOneLine(width) ? nameWidth() + GAP_EM * em() : 0);
    return Math.max(0, width - taken);
  }

  private double lineHeight(double width) {
    return Math.max(
        named.prefHeight(namedWidth(width)),
        afterWidth() > 0 ? after.prefHeight(USE_COMPUTED_SIZE) : 0);
  }

  private double nameHeight() {
    return name.prefHeight(USE_COMPUTED_SIZE);
  }

  @Override
  public Orientation getContentBias() {
    return Orientation.HORIZONTAL;
  }

  @Override
  protected double computeMinWidth(double height) {
    return 0;
  }

  @Override
  protected double computePrefWidth(double height) {
    return nameWidth() + GAP_EM * em() + named.prefWidth(USE_COMPUTED_SIZE) + afterWidth();
  }

  @Override
  protected double computeMinHeight(double width) {
    return computePrefHeight(width);
  }

  @Override
  protected double computePrefHeight(double given) {
    double width = given > 0 ? given : getWidth() > 0 ? getWidth() : computePrefWidth(0);
    double line = lineHeight(width);
    return onOneLine(width) ? Math.max(line, nameHeight()) : line + nameHeight();
  }

  @Override
  protected void layoutChildren() {
    double width = getWidth();
    double line = lineHeight(width);
    double own = namedWidth(width);
    boolean one = onOneLine(width);
    double left = one ? nameWidth() + GAP_EM * em() : 0;
    double top = one ? Math.max(0, (getHeight() - line) / 2) : nameHeight();
    double nameTop = one ? (getHeight() - nameHeight()) / 2 : 0;
    name.resizeRelocate(0, nameTop, Math.min(width, nameWidth()), nameHeight());
    double tall = named.prefHeight(own);
    named.resizeRelocate(left, top + (line - tall) / 2, own, tall);
    double room = Math.max(0, afterWidth() - GAP_EM * em());
    double high = after.prefHeight(USE_COMPUTED_SIZE);
    after.resizeRelocate(width - room, top + (line - high) / 2, room, high);
  }
}
