package neckway.review;

import java.util.Locale;

/** How a note lay in time. */
public enum Timing {
  ON,
  EARLY,
  LATE,
  /** Its onset cannot be told so finely. */
  UNSURE;

  private static final double ON_MS = 12;
  private static final double ON_SHARE = 0.05;

  /** The most that a note may lie off its slot and be called on: 12 ms, or 5 % of a slot. */
  public static double bandMs(double slotSeconds) {
    return Math.max(ON_MS, ON_SHARE * slotSeconds * 1000);
  }

  /**
   * @param offMs signed distance from the slot, early negative
   * @param slotSeconds a slot
   * @param fine whether the onset is known finely enough
   */
  public static Timing of(double offMs, double slotSeconds, boolean fine) {
    if (!fine) {
      return UNSURE;
    }
    if (Math.abs(offMs) <= bandMs(slotSeconds)) {
      return ON;
    }
    return offMs < 0 ? EARLY : LATE;
  }

  /** The word for it in files. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
