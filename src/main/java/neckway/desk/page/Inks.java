package neckway.desk.page;

import javafx.scene.paint.Color;

/**
 * The colours of the page. The two hues of the shapes are blue and vermilion, which people of any
 * colour vision tell apart (after Okabe and Ito, "Color Universal Design", 2008, values from
 * memory, darkened or lightened for text), and no verdict is told by hue alone.
 */
public record Inks(
    Color paper,
    Color ink,
    Color pale,
    Color line,
    Color lowerShape,
    Color upperShape,
    Color accent) {
  private static final Inks LIGHT =
      new Inks(
          Color.web("#fbfaf5"),
          Color.web("#22211e"),
          Color.web("#8d8a81"),
          Color.web("#c9c5b9"),
          Color.web("#0a6aa1"),
          Color.web("#b5480b"),
          Color.web("#22211e"));
  private static final Inks DARK =
      new Inks(
          Color.web("#1d1f22"),
          Color.web("#ece9e1"),
          Color.web("#8a8f96"),
          Color.web("#4a4f56"),
          Color.web("#6cbcf0"),
          Color.web("#f29a5c"),
          Color.web("#ece9e1"));

  /** For paper or for a dark room. */
  public static Inks of(boolean dark) {
    return dark ? DARK : LIGHT;
  }

  /** The hue of a shape of the chain: neighbours differ. */
  Color shape(int stand) {
    return stand % 2 == 0 ? lowerShape : upperShape;
  }
}
