package neckway.desk.read;

import java.util.OptionalInt;
import javafx.animation.AnimationTimer;
import javafx.css.PseudoClass;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.Slider;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import neckway.desk.Texts;
import neckway.desk.VolumeControl;
import neckway.desk.VolumeModel;
import neckway.desk.read.ReadingModel.Hearing;

/**
 * Shows what sounds while a take is read: how far it is, which note that is, and a playhead in the
 * close-up; and has the volume. Its room is kept while nothing sounds.
 */
final class SoundLine {
  private static final PseudoClass SOUNDING = PseudoClass.getPseudoClass("sounding");

  private final ReadingModel model;
  private final CloseUpView closeUp;
  private final FlowPane line = new FlowPane();
  private final ProgressBar bar = new ProgressBar(0);
  private final Label words = new Label();
  private final AnimationTimer timer =
      new AnimationTimer() {
        @Override
        public void handle(long now) {
          show();
        }
      };

  SoundLine(ReadingModel model, VolumeModel volume, CloseUpView closeUp) {
    this.model = model;
    this.closeUp = closeUp;
    words.getStyleClass().add("sounds");
    words.setMinWidth(Region.USE_PREF_SIZE);
    bar.getStyleClass().add("level");
    bar.setAccessibleText(Texts.of("read.sounds.far"));
    HBox far = new HBox(bar, words);
    far.getStyleClass().add("meter");
    line.getStyleClass().add("keys");
    line.getChildren().addAll(VolumeControl.named(volume), far);
    model.take().addListener(o -> there());
    model.hearing().addListener(o -> changed());
    there();
    changed();
  }

  Region node() {
    return line;
  }

  /** Whether a node is the volume, which takes the arrow keys itself. */
  boolean holds(Node focus) {
    return focus instanceof Slider;
  }

  /** A button that stays pressed in while what it begins sounds; to press it again stops that. */
  Button lit(Button button, Hearing what) {
    Runnable look =
        () -> {
          boolean on = model.hearing().get() == what;
          button.pseudoClassStateChanged(SOUNDING, on);
          button.setAccessibleText(
              on ? Texts.of("read.sounds.stop", button.getText()) : button.getText());
        };
    model.hearing().addListener(o -> look.run());
    look.run();
    return button;
  }

  private void there() {
    boolean there = model.take().get().isPresent();
    line.setManaged(there);
    line.setVisible(there);
  }

  private void changed() {
    if (model.hearing().get() == Hearing.NOTHING) {
      timer.stop();
    } else {
      timer.start();
    }
    show();
  }

  private void show() {
    bar.setProgress(model.heardShare().orElse(0));
    words.setText(said());
    closeUp.playhead(model.playhead());
  }

  private String said() {
    Hearing what = model.hearing().get();
    if (what == Hearing.NOTHING) {
      return Texts.of("read.sounds.nothing");
    }
    if (model.heardShare().isEmpty()) {
      return Texts.of("read.sounds.soon");
    }
    OptionalInt step = model.soundingStep();
    return step.isEmpty()
        ? Texts.of("read.sounds.count")
        : Texts.of("read.sounds.note", step.getAsInt() + 1);
  }
}
