package neckway.desk.page;

import javafx.scene.control.ScrollPane;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/**
 * Head, page and foot one under the other: in one window while the text is small enough, else as a
 * column that is scrolled, in which each part has the room that it needs.
 */
public final class Arrangement {
  /** From this scale of text on, parts that stood side by side stand one under the other. */
  public static final double STACKED = 1.45;

  private static final double PAGE_SHARE = 0.62;

  private final BorderPane root;
  private final Region head;
  private final Region page;
  private final Region foot;
  private Way way = Way.SIDE;

  private enum Way {
    /** Head, page and foot in one window. */
    SIDE,
    /** One under the other, scrolled. */
    STACKED,
    /** Head and page alone, since the page must be in sight. */
    BARE
  }

  /**
   * @param page takes the room that is left
   */
  public Arrangement(BorderPane root, Region head, Region page, Region foot) {
    this.root = root;
    this.head = head;
    this.page = page;
    this.foot = foot;
    side();
  }

  /**
   * Arranges for a scale of text, 1 for 100 per cent.
   *
   * @param runs whether the page is being played: then it is not scrolled, and the foot makes way
   */
  public void at(double scale, boolean runs) {
    Way wanted = scale <= STACKED ? Way.SIDE : runs ? Way.BARE : Way.STACKED;
    if (wanted == way) {
      return;
    }
    way = wanted;
    switch (way) {
      case SIDE -> side();
      case STACKED -> stack();
      case BARE -> bare();
    }
  }

  private void bare() {
    side();
    page.setMinHeight(0);
    root.setBottom(null);
  }

  private void side() {
    root.setCenter(null);
    page.minHeightProperty().unbind();
    page.setMinHeight(180);
    head.setMinHeight(Region.USE_PREF_SIZE);
    root.setTop(head);
    root.setCenter(page);
    root.setBottom(foot);
  }

  private void stack() {
    root.setTop(null);
    root.setBottom(null);
    root.setCenter(null);
    VBox column = new VBox(head, page, foot);
    VBox.setVgrow(page, Priority.ALWAYS);
    page.minHeightProperty().bind(root.heightProperty().multiply(PAGE_SHARE));
    ScrollPane scroll = new ScrollPane(column);
    scroll.setFitToWidth(true);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    scroll.setVbarPolicy(ScrollPane.ScrollBarPolicy.ALWAYS);
    scroll.getStyleClass().add("words");
    root.setCenter(scroll);
  }
}
