package neckway.desk;

import javafx.application.Platform;
import javafx.geometry.BoundingBox;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.ScrollPane;

/** Scrolls to what has the focus, however it came to it. */
public final class FollowFocus {
  private static final double AIR = 12;

  private FollowFocus() {}

  /** From now on, for what a pane scrolls. */
  public static void in(ScrollPane scroll) {
    scroll.viewportBoundsProperty().addListener(o -> later(scroll));
    scroll.contentProperty().get().layoutBoundsProperty().addListener(o -> later(scroll));
    scroll
        .sceneProperty()
        .addListener(
            (o, before, scene) -> {
              if (scene != null) {
                scene.focusOwnerProperty().addListener((f, old, now) -> later(scroll));
              }
            });
  }

  /**
   * Where something has the focus, what stands above it stays in sight with it; where there is no
   * room for both, that which stands above.
   */
  public static void keepInSight(Node focused, Node above) {
    focused.getProperties().put(FollowFocus.class, above);
  }

  /** Once the layout is done. */
  private static void later(ScrollPane scroll) {
    Platform.runLater(
        () -> {
          if (scroll.getScene() != null) {
            show(scroll, scroll.getScene().getFocusOwner());
          }
        });
  }

  private static void show(ScrollPane scroll, Node node) {
    if (node == null || !isInside(node, scroll.getContent())) {
      return;
    }
    Bounds at = place(scroll, node);
    double content = scroll.getContent().getLayoutBounds().getHeight();
    double view = scroll.getViewportBounds().getHeight();
    double hidden = content - view;
    if (hidden <= 0) {
      return;
    }
    if (node.getProperties().get(FollowFocus.class) instanceof Node first) {
      Bounds above = place(scroll, first);
      double height = Math.min(view - 2 * AIR, at.getMaxY() - above.getMinY());
      at = new BoundingBox(at.getMinX(), above.getMinY(), at.getWidth(), height);
    }
    double top = scroll.getVvalue() * hidden;
    if (at.getMinY() - AIR < top || at.getHeight() > view) {
      scroll.setVvalue(Math.max(0, (at.getMinY() - AIR) / hidden));
    } else if (at.getMaxY() + AIR > top + view) {
      scroll.setVvalue(Math.min(1, (at.getMaxY() + AIR - view) / hidden));
    }
  }

  private static Bounds place(ScrollPane scroll, Node node) {
    return scroll.getContent().sceneToLocal(node.localToScene(node.getLayoutBounds()));
  }

  private static boolean isInside(Node node, Node content) {
    for (Parent at = node.getParent(); at != null; at = at.getParent()) {
      if (at == content) {
        return true;
      }
    }
    return false;
  }
}
