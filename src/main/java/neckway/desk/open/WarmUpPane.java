package neckway.desk.open;

import java.util.Optional;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import neckway.desk.DrillWords;
import neckway.desk.FollowFocus;
import neckway.desk.Texts;
import neckway.desk.open.WarmUpModel.Shown;
import neckway.desk.open.WarmUpModel.Stage;
import neckway.drill.PlayableDrill;
import neckway.practice.PlanItem;

/** A warm-up's step, large, with a key to go on and one that stops it. */
final class WarmUpPane {
  private final WarmUpModel model;
  private final Label which = label("details");
  private final Label what = label("headline");
  private final Label drill = label("open-first");
  private final Label care = label("whys");
  private final Button next = new Button();
  private final Button hurts = new Button(Texts.of("warmup.hurts"));
  private final ScrollPane scroll = new ScrollPane();

  WarmUpPane(WarmUpModel model) {
    this.model = model;
    next.getStyleClass().add("main-action");
    next.setOnAction(e -> model.next());
    hurts.getStyleClass().add("keyed");
    hurts.setOnAction(e -> model.hurts());
    for (Button each : new Button[] {next, hurts}) {
      each.setMinWidth(Region.USE_PREF_SIZE);
    }
    FlowPane keys = new FlowPane(next, hurts);
    keys.getStyleClass().add("open-keys");
    VBox page = new VBox(which, what, drill, keys, care);
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
    hurts.setVisible(item.isPresent());
    hurts.setManaged(item.isPresent());
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
