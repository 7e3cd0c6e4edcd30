package neckway.desk.choose;

import javafx.geometry.VPos;
import javafx.scene.shape.Line;
import javafx.scene.text.Font;
import javafx.scene.text.Text;
import neckway.desk.Type;
import neckway.desk.choose.NeckPicture.Side;

/** Lines and words of a drawn neck; their colours come from the style sheet. */
final class Forms {
  private Forms() {}

  /** A line. */
  static Line line(double x1, double y1, double x2, double y2, String... styles) {
    Line line = new Line(x1, y1, x2, y2);
    line.getStyleClass().addAll(styles);
    return line;
  }

  /** Words about a point. */
  static Text text(String words, double x, double y, double size, boolean bold, String... styles) {
    Text text = new Text(words);
    text.setFont(Type.of(bold, size));
    text.setTextOrigin(VPos.CENTER);
    text.setX(x - text.getLayoutBounds().getWidth() / 2);
    text.setY(y);
    text.setMouseTransparent(true);
    text.getStyleClass().addAll(styles);
    return text;
  }

  /** Makes words smaller until they fit a width. */
  static void shrink(Text text, double width) {
    double own = text.getLayoutBounds().getWidth();
    if (own > width) {
      double middle = text.getX() + own / 2;
      Font font = text.getFont();
      boolean bold = font.getStyle().contains("Bold");
      text.setFont(Type.of(bold, font.getSize() * width / own));
      text.setX(middle - text.getLayoutBounds().getWidth() / 2);
    }
  }

  /** Whether something is at full strength, as a style class. */
  static String strength(boolean inPair) {
    return inPair ? "in-pair" : "aside";
  }

  /** A stand's look as a style class. */
  static String word(Side side) {
    return side == Side.LOWER ? "lower" : "upper";
  }
}
