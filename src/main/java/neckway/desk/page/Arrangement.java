package neckway.desk.page;

import javafx.scene.control.ScrollPane;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import neckway.desk.LookModel;

/**
 * Head, page and foot one under the other: in one window while the text is small enough, else as a
 * column that is scrolled, in which each part has the room that it needs.
 */
public final class Arrangement {
  /** From this crowding on, per cent, parts that stood side by side stand one under the other. */
  private static final int STACKED_PERCENT = 145;

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

  /** Whether parts that stand side by side in the usual window stand one under the other. */
  public static boolean stacked(LookModel look) {
    return look.crowdingPercent().get() > STACKED_PERCENT;
  }

  /**
   * Arranges for a size of text in a size of window.
   *
   * @param runs whether the page is being played: then it is not scrolled, and the foot makes way
   */
  public void at(LookModel look, boolean runs) {
    Way wanted = !stacked(look) ? Way.SIDE : runs ? Way.BARE : Way.STACKED;
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
