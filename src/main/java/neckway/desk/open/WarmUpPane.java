package neckway.desk.open;

import java.util.Optional;
import javafx.animation.Animation;
import javafx.animation.KeyFrame;
import javafx.animation.Timeline;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.util.Duration;
import neckway.desk.DrillWords;
import neckway.desk.FollowFocus;
import neckway.desk.LookModel;
import neckway.desk.Texts;
import neckway.desk.open.WarmUpModel.Shown;
import neckway.desk.open.WarmUpModel.Stage;
import neckway.desk.page.PageView;
import neckway.drill.PlayableDrill;
import neckway.page.PageModel;
import neckway.practice.PlanItem;

/** A warm-up's step, large, with a key to go on and one that stops it. */
final class WarmUpPane {
  /** The time that is left moves once a second, and a drill begins as soon as it can. */
  private static final Duration TICK = Duration.millis(250);

  private static final double PERCENT = 100;

  /** Two lines of music, pixels. */
  private static final double PAGE_HEIGHT = 300;

  private final WarmUpModel model;
  private final Label which = label("details");
  private final Label what = label("headline");
  private final Label drill = label("open-first");
  private final Label care = label("whys");
  private final Button next = new Button();
  private final Button hurts = new Button(Texts.of("warmup.hurts"));
  private final Label line = label("whys");
  private final Label count = label("warm-count");
  private final StackPane music = new StackPane();
  private final LookModel look;
  private final ScrollPane scroll = new ScrollPane();
  private final Timeline clock = new Timeline(new KeyFrame(TICK, e -> tick()));

  WarmUpPane(WarmUpModel model, LookModel look) {
    this.model = model;
    this.look = look;
    clock.setCycleCount(Animation.INDEFINITE);
    line.textProperty().bind(model.line());
    line.managedProperty().bind(model.line().isNotEmpty());
    count.textProperty().bind(model.count());
    count.visibleProperty().bind(model.count().isNotEmpty());
    model
        .count()
        .addListener(
            (o, old, now) -> {
              if (old.isEmpty()) {
                musicInSight();
              }
            });
    music.setAlignment(Pos.TOP_RIGHT);
    model.page().addListener((o, old, now) -> music(now));
    next.getStyleClass().add("main-action");
    next.setOnAction(e -> model.next());
    hurts.getStyleClass().add("keyed");
    hurts.setOnAction(e -> model.hurts());
    for (Button each : new Button[] {next, hurts}) {
      each.setMinWidth(Region.USE_PREF_SIZE);
    }
    FlowPane keys = new FlowPane(next, hurts);
    keys.getStyleClass().add("open-keys");
    VBox page = new VBox(which, what, drill, line, keys, music, care);
    page.getStyleClass().addAll("page", "open-begin");
    scroll.setContent(page);
    scroll.setFitToWidth(true);
    scroll.setFocusTraversable(false);
    scroll.getStyleClass().add("scroll");
    FollowFocus.in(scroll);
    model.shown().addListener((o, old, now) -> show(now));
  }

  private static Label label(String style) {
    Label label = new Label();
    label.setWrapText(true);
    label.setMinHeight(Region.USE_PREF_SIZE);
    label.getStyleClass().add(style);
    return label;
  }

  /** The page that is played from, with the count-in over its end. */
  private void music(Optional<PageModel> page) {
    music.getChildren().clear();
    show(music, page.isPresent());
    page.ifPresent(
        shown -> {
          PageView view = PageView.inTurn(shown);
          view.setAccessibleText(Texts.of("play.page"));
          view.look(look.dark().get(), look.fontPercent().get() / PERCENT);
          view.setPrefHeight(PAGE_HEIGHT * Math.sqrt(look.fontPercent().get() / PERCENT));
          music.getChildren().setAll(view, count);
        });
  }

  /** With large text what is played lies below; the player has no hand free to scroll. */
  private void musicInSight() {
    double above = music.getBoundsInParent().getMinY();
    double hidden = scroll.getContent().getBoundsInLocal().getHeight() - viewHeight();
    scroll.setVvalue(hidden <= 0 ? 0 : Math.min(1, above / hidden));
  }

  private double viewHeight() {
    return scroll.getViewportBounds().getHeight();
  }

  private static void show(Node node, boolean there) {
    node.setVisible(there);
    node.setManaged(there);
  }

  private void tick() {
    model.tick(System.nanoTime());
  }

  /** The view is in front, and time goes on. */
  void shown() {
    clock.play();
  }

  /** Another is. */
  void hidden() {
    clock.stop();
    model.hidden();
  }

  private void show(Shown now) {
    Optional<PlanItem> item =
        now.stage() == Stage.STEP ? Optional.of(now.item()) : Optional.empty();
    which.setText(
        item.map(i -> Texts.of("warmup.step", now.number() + 1, now.steps(), i.minutes()))
            .orElse(""));
    what.setText(
        switch (now.stage()) {
          case NONE -> "";
          case STEP -> now.item().why();
          case STOPPED -> Texts.of("warmup.stopped");
          case DONE -> Texts.of("warmup.done");
        });
    drill.setText(item.flatMap(PlanItem::drill).map(WarmUpPane::said).orElse(""));
    care.setText(item.isPresent() ? Texts.of("warmup.care") : "");
    next.setText(Texts.of(item.isPresent() ? "warmup.next" : "warmup.leave"));
    show(hurts, item.isPresent());
    next.requestFocus();
  }

  private static String said(PlayableDrill drill) {
    return Texts.of(
        "warmup.drill",
        DrillWords.place(drill),
        Texts.plain(drill.pulse().tempo()),
        drill.rounds());
  }

  /** Takes a key while a warm-up is led. */
  boolean takesKey(KeyCode code) {
    if (code == KeyCode.ESCAPE) {
      model.hurts();
    } else if (code == KeyCode.PAGE_DOWN) {
      model.next();
    } else {
      return false;
    }
    return true;
  }

  void focus() {
    next.requestFocus();
  }

  ScrollPane node() {
    return scroll;
  }
}
