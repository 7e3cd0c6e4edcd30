package neckway.desk.page;

import javafx.scene.paint.Color;

/**
 * The colours of the page, the same as the window's in desk.css. Notes are written in ink, soft or
 * pale; the two hues of the shapes are for the hand alone. They are blue and vermilion, which
 * people of any colour vision tell apart (after Okabe and Ito, "Color Universal Design", 2008,
 * values from memory, darkened or lightened for text), and no verdict is told by hue alone.
 */
public record Inks(
    Color paper,
    Color ink,
    Color soft,
    Color pale,
    Color line,
    Color lowerShape,
    Color upperShape,
    Color accent) {
  private static final Inks LIGHT =
      new Inks(
          Color.web("#fbfaf6"),
          Color.web("#1d1d1b"),
          Color.web("#63625c"),
          Color.web("#85837b"),
          Color.web("#c9c6bb"),
          Color.web("#005b96"),
          Color.web("#a84a00"),
          Color.web("#1d1d1b"));
  private static final Inks DARK =
      new Inks(
          Color.web("#1b1c1e"),
          Color.web("#ecebe6"),
          Color.web("#a9a8a2"),
          Color.web("#8b8d90"),
          Color.web("#4f5154"),
          Color.web("#7cc0f0"),
          Color.web("#f2a766"),
          Color.web("#ecebe6"));

  /** For paper or for a dark room. */
  public static Inks of(boolean dark) {
    return dark ? DARK : LIGHT;
  }

  /** The hue of a shape of the chain: neighbours differ. */
  Color shape(int stand) {
    return stand % 2 == 0 ? lowerShape : upperShape;
  }
}
