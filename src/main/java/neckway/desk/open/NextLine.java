package neckway.desk.open;

import java.util.EnumSet;
import java.util.Set;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import neckway.desk.LookModel;
import neckway.desk.OneKey;
import neckway.desk.Screen.Place;
import neckway.desk.Strip;
import neckway.desk.Texts;
import neckway.desk.open.OpenModel.Counted;

/**
 * What comes next and why, at the top of what is chosen and of what is read. Where a run is read,
 * also what becomes of it in the log.
 */
public final class NextLine implements Strip {
  private static final Set<Place> ABOVE = EnumSet.of(Place.CHOOSING, Place.READING);

  /** From this crowding on, per cent, parts stand one under the other. */
  private static final int CROWDED_PERCENT = 145;

  private final OpenModel model;
  private final LookModel look;
  private final Runnable overTime;
  private final VBox strip = new VBox();
  private final Label words = new Label();
  private final Button play = new Button(Texts.of("next.play"));
  private final Label better = new Label();
  private final FlowPane run = new FlowPane();
  private final CheckBox notCounted = new CheckBox(Texts.of("next.not-counted"));
  private final CheckBox kept = new CheckBox(Texts.of("next.kept"));
  private final Button join = new Button(Texts.of("next.over-time"));
  private Place place = Place.CHOOSING;

  /**
   * @param overTime shows the join that is read over time
   */
  public NextLine(OpenModel model, LookModel look, Runnable overTime) {
    this.model = model;
    this.look = look;
    this.overTime = overTime;
    strip.getStyleClass().add("next");
    words.setMinHeight(Region.USE_PREF_SIZE);
    words.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(words, Priority.ALWAYS);
    better.setWrapText(true);
    better.setMinHeight(Region.USE_PREF_SIZE);
    better.getStyleClass().add("title");
    play.setMinWidth(Region.USE_PREF_SIZE);
    play.getStyleClass().add("keyed");
    play.setOnAction(e -> model.playNext());
    join.getStyleClass().add("keyed");
    join.setOnAction(e -> overTime.run());
    notCounted.setOnAction(e -> model.count(!notCounted.isSelected()));
    kept.setOnAction(e -> model.mark(kept.isSelected()));
    run.getStyleClass().add("next-run");
    run.getChildren().setAll(notCounted, kept, join);
    HBox line = new HBox(play, words);
    line.getStyleClass().add("next-line");
    strip.getChildren().setAll(line, better, run);
    look.crowdingPercent().addListener(o -> fill());
    model.sitting().addListener(o -> fill());
    model.reading().addListener(o -> fill());
    model.counted().addListener(o -> fill());
    model.marked().addListener(o -> fill());
    model.better().addListener(o -> fill());
    fill();
  }

  private void fill() {
    boolean next = model.next().isPresent();
    play.setDisable(!next);
    boolean known = model.reading().get().isPresent();
    words.setText(
        next
            ? OpenWords.next(model.sitting().get())
            : Texts.of(known ? "next.none" : "next.reading"));
    // in little room one line, cut short; its whole text is in the hint
    words.setWrapText(look.crowdingPercent().get() <= CROWDED_PERCENT);
    words.setTooltip(words.isWrapText() ? null : new Tooltip(words.getText()));
    boolean read = place == Place.READING && model.counted().get() != Counted.NOT_KEPT;
    show(run, read);
    notCounted.setSelected(model.counted().get() == Counted.TAKEN_OUT);
    kept.setSelected(model.marked().get());
    kept.setDisable(model.counted().get() != Counted.IN_THE_LOG);
    better.setText(model.better().get());
    show(better, read && !model.better().get().isEmpty());
  }

  private static void show(Node node, boolean there) {
    node.setVisible(there);
    node.setManaged(there);
  }

  @Override
  public Region node() {
    return strip;
  }

  @Override
  public boolean isFor(Place front) {
    place = front;
    fill();
    return ABOVE.contains(front);
  }

  @Override
  public boolean takesKey(KeyEvent event, Node focus) {
    if (event.isShortcutDown()
        || event.isAltDown()
        || !ABOVE.contains(place) && place != Place.OPEN) {
      return false;
    }
    if (event.getCode() == KeyCode.PAGE_UP) {
      return model.playNext();
    }
    if (event.getCode() == KeyCode.DELETE && run.isVisible() && !OneKey.takesText(focus)) {
      model.count(model.counted().get() == Counted.TAKEN_OUT);
      return true;
    }
    if (event.getCode() == KeyCode.O && run.isVisible() && !OneKey.takesText(focus)) {
      overTime.run();
      return true;
    }
    return false;
  }
}
