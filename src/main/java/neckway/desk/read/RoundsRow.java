package neckway.desk.read;

import java.util.List;
import javafx.application.Platform;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import neckway.desk.Texts;
import neckway.desk.read.ReadingModel.Round;

/** The rounds side by side, each with its figures; the one that is pressed in is read. */
final class RoundsRow {
  /** Lines of rounds in sight; of more, those before are scrolled to. */
  private static final int LINES = 2;

  private final ReadingModel model;
  private final Button before;
  private final FlowPane row = new FlowPane();
  private final ScrollPane scroll = new ScrollPane(row);
  private final VBox place = new VBox();

  /**
   * @param before goes to the round before the one that is read
   */
  RoundsRow(ReadingModel model, Button before) {
    this.model = model;
    this.before = before;
    before.setMinSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
    row.getStyleClass().add("rounds");
    scroll.getStyleClass().add("words");
    scroll.setFitToWidth(true);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    scroll.setFocusTraversable(false);
    scroll.setAccessibleText(Texts.of("read.rounds"));
    // a height set within a layout would only count in the next one
    row.heightProperty().addListener(o -> Platform.runLater(this::height));
    model.rounds().addListener(o -> fill());
    model.take().addListener(o -> choose());
    fill();
  }

  Region node() {
    return place;
  }

  private void fill() {
    List<Round> rounds = model.rounds().get();
    boolean several = rounds.size() > 1;
    row.getChildren().clear();
    if (several) {
      rounds.forEach(round -> row.getChildren().add(button(round)));
      row.getChildren().add(before);
    }
    place.getChildren().setAll(several ? List.of(scroll) : List.of());
    place.setManaged(several);
    choose();
  }

  private void height() {
    if (!row.getChildren().isEmpty()) {
      double line = row.getChildren().get(0).prefHeight(Region.USE_COMPUTED_SIZE);
      double around = row.getInsets().getTop() + row.getInsets().getBottom() + 2;
      double most = LINES * line + (LINES - 1) * row.getVgap() + around;
      double height = Math.min(row.getHeight() + 2, most);
      scroll.setMinHeight(height);
      scroll.setPrefHeight(height);
      scroll.setMaxHeight(height);
    }
  }

  private ToggleButton button(Round round) {
    ToggleButton button = new ToggleButton(ReadingWords.round(round));
    button.getStyleClass().add("round");
    button.setMinSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
    button.setUserData(round);
    button.setOnAction(
        e -> {
          model.open(round.take());
          choose();
        });
    return button;
  }

  /** Presses in the one that is read, and brings it into sight. */
  private void choose() {
    for (Node node : row.getChildren()) {
      if (node instanceof ToggleButton button) {
        boolean read = model.round().filter(r -> r.equals(button.getUserData())).isPresent();
        button.setSelected(read);
        if (read) {
          Platform.runLater(() -> show(button));
        }
      }
    }
  }

  private void show(ToggleButton button) {
    double hidden = row.getHeight() - scroll.getViewportBounds().getHeight();
    if (hidden > 0) {
      double middle = button.getBoundsInParent().getCenterY();
      double from = middle - scroll.getViewportBounds().getHeight() / 2;
      scroll.setVvalue(Math.max(0, Math.min(1, from / hidden)));
    }
  }
}
