package neckway.desk;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import javafx.scene.text.Font;
import javafx.scene.text.FontWeight;

/**
 * The type of the window: Lato, which is shipped with it, so that it looks alike on every system.
 * Its figures are all equally wide, so that columns of them stand under each other.
 */
public final class Type {
  /** Its name, as the style sheet has it too. */
  public static final String FAMILY = "Lato";

  private static final double ANY_SIZE = 12;

  static {
    load("Lato-Regular.ttf");
    load("Lato-Bold.ttf");
  }

  private Type() {}

  /** Makes sure that it is there for the style sheet. */
  static void ready() {
    // the work is done once, above
  }

  private static void load(String name) {
    try (InputStream in = Type.class.getResourceAsStream("fonts/" + name)) {
      Font.loadFont(in, ANY_SIZE);
    } catch (IOException e) {
      throw new UncheckedIOException(name + " cannot be read", e);
    }
  }

  /** Plain or bold, of a size in pixels. */
  public static Font of(boolean bold, double pixels) {
    return Font.font(FAMILY, bold ? FontWeight.BOLD : FontWeight.NORMAL, pixels);
  }
}
