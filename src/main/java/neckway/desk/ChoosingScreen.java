package neckway.desk;

import javafx.scene.Parent;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;

/** Choosing: the neck with its stands and joins, and everything else that makes a drill. */
public final class ChoosingScreen implements Screen {
  private final VBox root = new VBox();

  public ChoosingScreen(Desk desk) {
    root.getStyleClass().add("page");
    Label headline = new Label(desk.drill().drill().title());
    headline.getStyleClass().add("headline");
    root.getChildren().add(headline);
  }

  @Override
  public Parent node() {
    return root;
  }

  @Override
  public void shown() {
    root.requestFocus();
  }

  @Override
  public void hidden() {
    // nothing runs
  }
}
