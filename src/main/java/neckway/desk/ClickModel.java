package neckway.desk;

import javafx.beans.property.DoubleProperty;
import javafx.beans.property.SimpleDoubleProperty;
import neckway.file.SettingsFile;
import neckway.sound.ClickTrack;

/**
 * How loud the click is; kept for each output. Changed in the window's thread; {@link #gain()} may
 * be asked from any.
 */
public final class ClickModel {
  /** Loudest click, percent of full scale. */
  public static final double MOST_PERCENT = 100 * ClickTrack.MAX_GAIN;

  private static final String KEPT = "clickPercent";
  private static final String KEPT_OF = "clickPercent of ";

  private final SettingsFile settings;
  private final DoubleProperty percent = new SimpleDoubleProperty(this, "percent");
  private volatile double gain;

  /** As it was kept. */
  public ClickModel(SettingsFile settings) {
    this.settings = settings;
    percent.set(settings.number(KEPT, 0, MOST_PERCENT).orElse(100 * ClickTrack.USUAL_GAIN));
    gain = percent.get() / 100;
    percent.addListener(o -> chosen());
  }

  private String keptForOutput() {
    return KEPT_OF + settings.text(Desk.OUTPUT).orElse("");
  }

  private void chosen() {
    gain = percent.get() / 100;
    settings.put(KEPT, percent.get());
    settings.put(keptForOutput(), percent.get());
  }

  /** Another output was chosen: what is kept for it holds, if anything is. */
  public void outputChosen() {
    settings.number(keptForOutput(), 0, MOST_PERCENT).ifPresent(percent::set);
  }

  /** Percent of full scale. */
  public DoubleProperty percent() {
    return percent;
  }

  /** Share of full scale, from any thread. */
  public double gain() {
    return gain;
  }
}
