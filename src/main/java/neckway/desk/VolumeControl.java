package neckway.desk;

import javafx.scene.control.Label;
import javafx.scene.control.Slider;
import javafx.scene.layout.HBox;

/** The slider by which everything that is played back is turned up and down. */
public final class VolumeControl {
  private static final double STEP = 0.05;

  private VolumeControl() {}

  /** The slider alone, named for a screen reader. */
  public static Slider slider(VolumeModel volume) {
    Slider slider = new Slider(0, 1, volume.share().get());
    slider.setBlockIncrement(STEP);
    slider.setAccessibleText(Texts.of("volume.name"));
    slider.valueProperty().bindBidirectional(volume.share());
    return slider;
  }

  /** The slider with its name beside it. */
  public static HBox named(VolumeModel volume) {
    Label name = new Label(Texts.of("volume.name"));
    name.setMinWidth(Label.USE_PREF_SIZE);
    Slider slider = slider(volume);
    name.setLabelFor(slider);
    HBox both = new HBox(name, slider);
    both.getStyleClass().add("loudness");
    return both;
  }
}
