package neckway.desk.open;

import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import neckway.desk.Texts;
import neckway.desk.open.TakesModel.Use;

/** How much disk the takes use, and a way to clear the old ones, which is asked about once. */
final class TakesLine {
  private final TakesModel model;
  private final VBox box = new VBox();
  private final Label words = new Label();
  private final Button clear = new Button();
  private final Button sure = new Button();
  private final Button leave = new Button(Texts.of("takes.leave"));
  private boolean asked;

  TakesLine(TakesModel model) {
    this.model = model;
    words.setWrapText(true);
    words.setMinHeight(Region.USE_PREF_SIZE);
    words.getStyleClass().add("whys");
    clear.setOnAction(e -> ask(true));
    sure.setOnAction(
        e -> {
          ask(false);
          model.clear();
        });
    leave.setOnAction(e -> ask(false));
    FlowPane keys = new FlowPane(clear, sure, leave);
    keys.getStyleClass().add("keys");
    keys.getChildren().forEach(b -> b.getStyleClass().add("keyed"));
    box.getChildren().setAll(words, keys);
    box.getStyleClass().add("takes");
    model.use().addListener(o -> fill());
    fill();
  }

  Region node() {
    return box;
  }

  private void ask(boolean now) {
    asked = now;
    fill();
    if (now) {
      leave.requestFocus();
    }
  }

  private void fill() {
    Use use = model.use().get();
    words.setText(
        use.files() == 0
            ? Texts.of("takes.none", use.folder())
            : Texts.of(
                use.files() == 1 ? "takes.one" : "takes.use",
                use.files(),
                TakesFolder.size(use.bytes()),
                use.folder()));
    long days = TakesFolder.OLD.toDays();
    String old = TakesFolder.size(use.oldBytes());
    clear.setText(Texts.of("takes.clear", use.oldFiles(), days, old));
    sure.setText(Texts.of("takes.sure", use.oldFiles()));
    show(clear, !asked && use.oldFiles() > 0);
    show(sure, asked);
    show(leave, asked);
  }

  private static void show(Button button, boolean there) {
    button.setVisible(there);
    button.setManaged(there);
  }
}
