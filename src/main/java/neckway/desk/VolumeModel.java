package neckway.desk;

import javafx.beans.property.DoubleProperty;
import javafx.beans.property.SimpleDoubleProperty;
import neckway.file.SettingsFile;

/**
 * How loud everything is that is played back; kept for each output, as the click's loudness is.
 * Changed in the window's thread; {@link #gain()} may be asked from any.
 */
public final class VolumeModel {
  /**
   * Where nothing was set: so quiet that a guitar's peaks are about as high as the usual click of a
   * run, for nobody knows yet what is plugged in.
   */
  public static final double USUAL = 0.2;

  private static final String KEPT_OF = "hearVolume of ";

  private final SettingsFile settings;
  private final DoubleProperty share = new SimpleDoubleProperty(this, "share");
  private volatile double gain;

  VolumeModel(SettingsFile settings) {
    this.settings = settings;
    share.addListener((o, before, now) -> chosen(now.doubleValue()));
    share.set(settings.number(keptFor(output()), 0, 1).orElse(USUAL));
    gain = share.get();
  }

  private static String keptFor(String output) {
    return KEPT_OF + output;
  }

  private String output() {
    return settings.text(Desk.OUTPUT).orElse("");
  }

  private void chosen(double now) {
    gain = now;
    settings.put(keptFor(output()), now);
  }

  /**
   * Another output was chosen: what is kept for it holds, and where nothing is, no more than is
   * usual.
   */
  public void outputChosen() {
    share.set(settings.number(keptFor(output()), 0, 1).orElse(Math.min(USUAL, share.get())));
  }

  /** 0 to 1; it turns down what would sound at {@link neckway.sound.Levelling#TARGET_LKFS}. */
  public DoubleProperty share() {
    return share;
  }

  /** The same, from any thread. */
  public double gain() {
    return gain;
  }
}
