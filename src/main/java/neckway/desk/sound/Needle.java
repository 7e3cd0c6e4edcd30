package neckway.desk.sound;

import java.util.OptionalDouble;
import javafx.scene.layout.Pane;
import javafx.scene.shape.Line;
import javafx.scene.shape.Rectangle;

/**
 * How far a tone is from its note: a mark that is narrow in tune, on a scale with the stretch that
 * counts as in tune.
 */
final class Needle extends Pane {
  static final double HALF_CENTS = 50;
  private static final double NARROW = 4;
  private static final double WIDE = 12;

  private final Rectangle target = new Rectangle();
  private final Line scale = new Line();
  private final Line middle = new Line();
  private final Rectangle mark = new Rectangle();
  private OptionalDouble cents = OptionalDouble.empty();

  Needle() {
    getStyleClass().add("needle");
    scale.getStyleClass().add("needle-scale");
    middle.getStyleClass().add("needle-middle");
    mark.getStyleClass().add("needle-mark");
    target.getStyleClass().add("needle-target");
    getChildren().addAll(target, scale, middle, mark);
    mark.setVisible(false);
  }

  void show(OptionalDouble toneHz) {
    cents =
        toneHz.isPresent()
            ? OptionalDouble.of(SoundWords.cents(toneHz.getAsDouble()))
            : OptionalDouble.empty();
    mark.setVisible(cents.isPresent());
    requestLayout();
  }

  @Override
  protected void layoutChildren() {
    double width = getWidth();
    double height = getHeight();
    double near = SoundWords.IN_TUNE_CENTS / HALF_CENTS * width / 2;
    target.setX(width / 2 - near);
    target.setWidth(2 * near);
    target.setY(0);
    target.setHeight(height);
    scale.setStartX(0);
    scale.setEndX(width);
    scale.setStartY(height / 2);
    scale.setEndY(height / 2);
    middle.setStartX(width / 2);
    middle.setEndX(width / 2);
    middle.setStartY(0);
    middle.setEndY(height);
    double off = cents.orElse(0);
    double wide = Math.abs(off) < SoundWords.IN_TUNE_CENTS ? NARROW : WIDE;
    mark.setX(width / 2 + off / HALF_CENTS * width / 2 - wide / 2);
    mark.setY(height * 0.15);
    mark.setWidth(wide);
    mark.setHeight(height * 0.7);
  }
}
