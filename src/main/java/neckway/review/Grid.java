package neckway.review;

import java.util.Locale;
import neckway.drill.Pulse;

/**
 * The slots in which notes are due.
 *
 * @param source where it is known from
 * @param tempo beats a minute
 * @param firstBeat when step 0 is due, seconds
 * @param slotSeconds from slot to slot
 */
public record Grid(Source source, double tempo, double firstBeat, double slotSeconds) {
  /** Where a grid is known from. */
  public enum Source {
    /** Named beforehand, or by the click that was played. */
    GIVEN,
    /** Heard from the click in the recording. */
    CLICK,
    /** Fitted to the notes. */
    NOTES;

    /** The word for it in files. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** A grid whose tempo is the pulse's. */
  static Grid of(Source source, Pulse pulse, double firstBeat) {
    return new Grid(source, pulse.tempo(), firstBeat, pulse.slotSeconds());
  }

  /** The same beat with other slots. */
  Grid withSlot(double otherSlotSeconds) {
    return new Grid(source, tempo, firstBeat, otherSlotSeconds);
  }

  /** The nearest slot. */
  public long slot(double seconds) {
    return Math.round((seconds - firstBeat) / slotSeconds);
  }

  /** Signed distance from the nearest slot, ms; early is negative. */
  public double offMs(double seconds) {
    return (seconds - firstBeat - slot(seconds) * slotSeconds) * 1000;
  }

  /** When a step is due, seconds. */
  public double due(int step) {
    return firstBeat + step * slotSeconds;
  }
}
