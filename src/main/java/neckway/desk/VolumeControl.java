package neckway.desk;

import javafx.beans.property.DoubleProperty;
import javafx.scene.control.Label;
import javafx.scene.control.Slider;
import javafx.scene.layout.HBox;

/** The sliders by which what is played back, and the click, are turned up and down. */
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
    return named("volume.name", slider(volume));
  }

  /** The click's slider, in percent of full scale, with its name beside it. */
  public static HBox named(ClickModel click) {
    Slider slider = new Slider(0, ClickModel.MOST_PERCENT, click.percent().get());
    slider.setBlockIncrement(1);
    slider.setAccessibleText(Texts.of("sound.click"));
    slider.valueProperty().bindBidirectional(click.percent());
    return named("sound.click", slider);
  }

  /** A backing's slider, in percent, with its name beside it. */
  public static HBox backing(DoubleProperty percent) {
    Slider slider = new Slider(0, 100, percent.get());
    slider.setBlockIncrement(2);
    slider.setAccessibleText(Texts.of("play.backing.volume"));
    slider.valueProperty().bindBidirectional(percent);
    return named("play.backing.volume", slider);
  }

  private static HBox named(String key, Slider slider) {
    Label name = new Label(Texts.of(key));
    name.setMinWidth(Label.USE_PREF_SIZE);
    name.setLabelFor(slider);
    HBox both = new HBox(name, slider);
    both.getStyleClass().add("loudness");
    return both;
  }
}
