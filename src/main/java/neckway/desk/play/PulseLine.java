package neckway.desk.play;

import java.util.Optional;
import javafx.beans.binding.Bindings;
import javafx.scene.AccessibleRole;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import neckway.desk.LookModel;
import neckway.desk.Texts;
import neckway.desk.play.PlayingModel.State;
import neckway.drill.PlayableDrill;
import neckway.neck.Step;

/** What a player looks up to while playing, in large type: the beat, the tempo, the round. */
final class PulseLine extends FlowPane {
  private final PlayingModel model;
  private final BeatLight light;
  private final Label round = new Label();
  private final Label title = new Label();

  PulseLine(PlayingModel model, LookModel look) {
    this.model = model;
    getStyleClass().add("pulse");
    light = new BeatLight(model.drill().pulse());
    Label tempo = new Label();
    tempo.getStyleClass().add("tempo");
    tempo.setMinWidth(Region.USE_PREF_SIZE);
    tempo
        .textProperty()
        .bind(
            Bindings.createStringBinding(
                () -> Texts.plain(model.drill().pulse().tempo()), model.page()));
    tempo.setAccessibleRole(AccessibleRole.TEXT);
    HBox beat = new HBox(light, tempo);
    beat.getStyleClass().add("beat");
    round.getStyleClass().add("round-now");
    round.setMinWidth(Region.USE_PREF_SIZE);
    title.getStyleClass().add("drill-title");
    title.setWrapText(true);
    title.maxWidthProperty().bind(widthProperty());
    setMinWidth(0);
    title
        .textProperty()
        .bind(
            Bindings.createStringBinding(
                () -> PlayingWords.headline(model.drill()), model.page(), model.state()));
    getChildren().addAll(beat, round, title);
    look.dark().addListener(o -> light.look(look.dark().get()));
    light.look(look.dark().get());
    model.beat().addListener((o, before, now) -> now.ifPresent(light::beat));
    model.state().addListener(o -> state());
    model.page().addListener(o -> state());
    model.round().addListener(o -> count());
    model.settings().repeat().addListener(o -> count());
    model.settings().guessFirst().addListener(o -> count());
    state();
  }

  /** Whether the drill's title stands beside them. */
  void showTitle(boolean shown) {
    title.setManaged(shown);
    title.setVisible(shown);
  }

  private void state() {
    State now = model.state().get();
    if (now != State.PLAYING && now != State.COUNT_IN) {
      light.rest(model.drill().pulse());
    }
    count();
  }

  /** Says anew which round it is; asked once a frame. */
  void count() {
    String words = words();
    if (!words.equals(round.getText())) {
      round.setText(words);
    }
    round.setManaged(!words.isEmpty());
  }

  private String words() {
    Optional<Step> here = model.page().get().here();
    int rounds = model.drill().rounds();
    if (rounds > 1) {
      int now = roundOf(here.map(Step::index).orElse(0), model.drill());
      return Texts.of("play.round.of", now, rounds);
    }
    boolean repeats = model.settings().repeat().get() && !model.settings().guessFirst().get();
    boolean runs = model.state().get() != State.READY && model.state().get() != State.GUESSING;
    return repeats && runs ? Texts.of("play.round", model.round().get() + 1) : "";
  }

  /** The round that a step is in, from 1. The last note of a round is the first of the next. */
  static int roundOf(int step, PlayableDrill drill) {
    int steps = drill.route().steps().size();
    int inRound = Math.max(1, (steps - 1) / drill.rounds());
    return Math.min(drill.rounds(), step / inRound + 1);
  }
}
