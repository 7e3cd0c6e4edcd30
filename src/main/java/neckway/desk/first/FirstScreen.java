package neckway.desk.first;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.application.Platform;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import neckway.desk.DrillWords;
import neckway.desk.Screen;
import neckway.desk.Texts;
import neckway.desk.play.SoundCheck;
import neckway.neck.Shape;

/** One question of the first start at a time, large, with its answers as buttons. */
public final class FirstScreen implements Screen {
  private final FirstModel model;
  private final SoundCheck check;
  private final VBox page = new VBox();
  private final ScrollPane root = new ScrollPane(page);
  private final ProgressBar level = new ProgressBar(0);
  private final Label heard = text("first-said");

  /**
   * @param check listens while the guitar is asked for
   */
  public FirstScreen(FirstModel model, SoundCheck check) {
    this.model = model;
    this.check = check;
    page.getStyleClass().addAll("page", "first");
    root.setFitToWidth(true);
    root.setFitToHeight(true);
    root.getStyleClass().add("scroll");
    root.setFocusTraversable(false);
    level.getStyleClass().add("level");
    level.setMaxWidth(Double.MAX_VALUE);
    level.setAccessibleText(Texts.of("first.level"));
    model.question().addListener(o -> ask());
    ask();
  }

  private void ask() {
    FirstModel.Question question = model.question().get();
    Label title = text("first-question");
    title.setText(Texts.of("first." + question.name().toLowerCase(Locale.ROOT)));
    FlowPane answers = new FlowPane();
    answers.getStyleClass().add("keys");
    List<Region> rows = new ArrayList<>(List.of(title));
    switch (question) {
      case GUITAR -> guitar(rows, answers);
      case SHAPES -> shapes(rows, answers);
      case NECK -> neck(rows, answers);
    }
    answers.getChildren().add(button("first.skip", model::skip));
    rows.add(answers);
    Label keys = text("whys");
    keys.setText(Texts.of("first.keys"));
    rows.add(keys);
    page.getChildren().setAll(rows);
    focus(answers);
  }

  private static void focus(FlowPane answers) {
    Platform.runLater(() -> answers.getChildren().get(0).requestFocus());
  }

  private void guitar(List<Region> rows, FlowPane answers) {
    rows.add(level);
    heard.setText(Texts.of("first.pluck"));
    rows.add(heard);
    answers.getChildren().add(main("first.guitar.here", () -> model.guitar(true)));
    answers.getChildren().add(button("first.guitar.looking", () -> model.guitar(false)));
  }

  private void shapes(List<Region> rows, FlowPane answers) {
    stopListening();
    Map<Shape, CheckBox> boxes = new EnumMap<>(Shape.class);
    FlowPane all = new FlowPane();
    all.getStyleClass().add("below");
    for (Shape shape : Shape.values()) {
      CheckBox box =
          new CheckBox(Texts.of("first.shape", shape.ordinal() + 1, DrillWords.name(shape)));
      boxes.put(shape, box);
      all.getChildren().add(box);
    }
    rows.add(all);
    Label why = text("first-said");
    why.setText(Texts.of("first.shapes.why"));
    rows.add(why);
    answers
        .getChildren()
        .add(
            main(
                "first.on",
                () ->
                    model.known(
                        boxes.entrySet().stream()
                            .filter(e -> e.getValue().isSelected())
                            .map(Map.Entry::getKey)
                            .toList())));
  }

  private void neck(List<Region> rows, FlowPane answers) {
    CheckBox left = new CheckBox(Texts.of("first.neck.left"));
    CheckBox low = new CheckBox(Texts.of("first.neck.low"));
    FlowPane all = new FlowPane(left, low);
    all.getStyleClass().add("below");
    rows.add(all);
    answers
        .getChildren()
        .add(main("first.on", () -> model.neck(left.isSelected(), low.isSelected())));
  }

  private static Label text(String style) {
    Label label = new Label();
    label.setWrapText(true);
    label.setMinHeight(Region.USE_PREF_SIZE);
    label.getStyleClass().add(style);
    return label;
  }

  private static Button main(String key, Runnable action) {
    Button button = button(key, action);
    button.getStyleClass().add("main-action");
    return button;
  }

  private static Button button(String key, Runnable action) {
    Button button = new Button(Texts.of(key));
    button.setMinWidth(Region.USE_PREF_SIZE);
    button.setOnAction(e -> action.run());
    return button;
  }

  private void listen() {
    Consumer<SoundCheck.Report> show =
        report ->
            Platform.runLater(
                () -> {
                  level.setProgress(report.level());
                  if (!report.line().isEmpty()) {
                    heard.setText(report.line());
                  }
                });
    check.start(Optional.empty(), show);
  }

  private void stopListening() {
    check.stop(() -> {});
  }

  @Override
  public boolean takesKey(KeyEvent event) {
    if (event.getCode() == KeyCode.ESCAPE) {
      model.skipAll();
      return true;
    }
    return false;
  }

  @Override
  public Parent node() {
    return root;
  }

  @Override
  public void shown() {
    if (model.question().get() == FirstModel.Question.GUITAR) {
      listen();
    }
  }

  @Override
  public void hidden() {
    stopListening();
  }
}
