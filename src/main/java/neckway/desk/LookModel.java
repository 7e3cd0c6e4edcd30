package neckway.desk;

import java.util.Arrays;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;
import neckway.file.SettingsFile;

/** How things look: text size, light or dark, which way round the neck is, what the dots say. */
public final class LookModel {
  /** The smallest text, per cent. */
  public static final int LEAST_PERCENT = 100;

  /** The largest text, per cent. */
  public static final int MOST_PERCENT = 300;

  /** From one size of text to the next, per cent. */
  public static final int PERCENT_STEP = 25;

  /** Width of the usual window, pixels. */
  public static final double USUAL_WIDTH = 1280;

  /** Height of the usual window, pixels. */
  public static final double USUAL_HEIGHT = 800;

  private static final double MOST_FACTOR = 1.75;
  private static final double FACTOR_STEP = 0.05;

  /** What stands on the dots of the neck. */
  public enum Label {
    FINGER,
    DEGREE,
    NOTE
  }

  private final ReadOnlyIntegerWrapper textPercent =
      new ReadOnlyIntegerWrapper(this, "textPercent", LEAST_PERCENT);
  private final ReadOnlyIntegerWrapper fontPercent =
      new ReadOnlyIntegerWrapper(this, "fontPercent", LEAST_PERCENT);
  private final ReadOnlyIntegerWrapper crowdingPercent =
      new ReadOnlyIntegerWrapper(this, "crowdingPercent", LEAST_PERCENT);
  private double windowFactor = 1;
  private double windowShare = 1;
  private final BooleanProperty dark = new SimpleBooleanProperty(this, "dark");
  private final BooleanProperty leftHanded = new SimpleBooleanProperty(this, "leftHanded");
  private final BooleanProperty lowStringOnTop = new SimpleBooleanProperty(this, "lowStringOnTop");
  private final BooleanProperty closeUp = new SimpleBooleanProperty(this, "closeUp");
  private final ObjectProperty<Label> label =
      new SimpleObjectProperty<>(this, "label", Label.FINGER);

  /** As it was kept. */
  public LookModel(SettingsFile kept) {
    kept.whole("textPercent", LEAST_PERCENT, MOST_PERCENT).ifPresent(this::text);
    dark.set(kept.flag("dark", false));
    leftHanded.set(kept.flag("leftHanded", false));
    lowStringOnTop.set(kept.flag("lowStringOnTop", false));
    closeUp.set(kept.flag("closeUp", false));
    kept.text("label")
        .flatMap(word -> Arrays.stream(Label.values()).filter(l -> word(l).equals(word)).findAny())
        .ifPresent(label::set);
  }

  /** Puts everything in the settings, to be saved with them. */
  public void put(SettingsFile settings) {
    settings.put("textPercent", textPercent.get());
    settings.put("dark", dark.get());
    settings.put("leftHanded", leftHanded.get());
    settings.put("lowStringOnTop", lowStringOnTop.get());
    settings.put("closeUp", closeUp.get());
    settings.put("label", word(label.get()));
  }

  private static String word(Label label) {
    return label.name().toLowerCase(java.util.Locale.ROOT);
  }

  /** Size of all text, {@value #LEAST_PERCENT} to {@value #MOST_PERCENT} per cent. */
  public ReadOnlyIntegerProperty textPercent() {
    return textPercent.getReadOnlyProperty();
  }

  /** Sets the size of all text; what is out of bounds becomes the bound. */
  public void text(int percent) {
    textPercent.set(Math.max(LEAST_PERCENT, Math.min(MOST_PERCENT, percent)));
    update();
  }

  /**
   * Size of all text as it is drawn: as chosen, and larger in a window that is larger than the
   * usual one, so that it can be read from afar.
   */
  public ReadOnlyIntegerProperty fontPercent() {
    return fontPercent.getReadOnlyProperty();
  }

  /**
   * How little room there is for the text: its size as it is drawn against the size of the window,
   * 100 per cent for plain text in the usual window. A small window counts like large text, and a
   * large window's own enlargement does not count.
   */
  public ReadOnlyIntegerProperty crowdingPercent() {
    return crowdingPercent.getReadOnlyProperty();
  }

  /** How much larger everything is drawn for the size of the window alone, 1 or more. */
  public double windowFactor() {
    return windowFactor;
  }

  /** Says how large the window is. */
  public void window(double width, double height) {
    windowShare = Math.min(width / USUAL_WIDTH, height / USUAL_HEIGHT);
    double steps = Math.floor(windowShare / FACTOR_STEP + 1e-9) * FACTOR_STEP;
    windowFactor = Math.max(1, Math.min(MOST_FACTOR, steps));
    update();
  }

  private void update() {
    fontPercent.set((int) Math.round(textPercent.get() * windowFactor));
    crowdingPercent.set((int) Math.round(textPercent.get() * windowFactor / windowShare));
  }

  public void largerText() {
    text(textPercent.get() + PERCENT_STEP);
  }

  public void smallerText() {
    text(textPercent.get() - PERCENT_STEP);
  }

  /** Light on dark. */
  public BooleanProperty dark() {
    return dark;
  }

  /** The nut on the right. */
  public BooleanProperty leftHanded() {
    return leftHanded;
  }

  /** The lowest-sounding string at the top, as a player who looks down sees it. */
  public BooleanProperty lowStringOnTop() {
    return lowStringOnTop;
  }

  /** Only the frets that are played, large, in place of the whole neck. */
  public BooleanProperty closeUp() {
    return closeUp;
  }

  /** What stands on the dots. */
  public ObjectProperty<Label> label() {
    return label;
  }
}
