package neckway.review;

import java.util.Locale;
import neckway.drill.Pulse;
import neckway.drill.Slots;

/**
 * The slots in which notes are due.
 *
 * @param source where it is known from
 * @param tempo beats a minute
 * @param firstBeat the first beat, seconds; step 0 is due there, unless the drill starts off it
 * @param slotSeconds from slot to slot, on the whole
 * @param slots how they lie between the beats
 */
public record Grid(Source source, double tempo, double firstBeat, double slotSeconds, Slots slots) {
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

  /** A grid of straight slots from the first beat on. */
  public Grid(Source source, double tempo, double firstBeat, double slotSeconds) {
    this(source, tempo, firstBeat, slotSeconds, Slots.EVEN);
  }

  /** A grid whose tempo and feel are the pulse's. */
  public static Grid of(Source source, Pulse pulse, double firstBeat) {
    return new Grid(source, pulse.tempo(), firstBeat, pulse.slotSeconds(), pulse.slots());
  }

  /** The same beat with other slots. */
  Grid withSlot(double otherSlotSeconds) {
    return new Grid(source, tempo, firstBeat, otherSlotSeconds, slots);
  }

  /** The nearest slot. */
  public long slot(double seconds) {
    return slots.nearest((seconds - firstBeat) / slotSeconds);
  }

  /** Signed distance from the nearest slot, ms; early is negative. */
  public double offMs(double seconds) {
    return (seconds - firstBeat - slots.position(slot(seconds)) * slotSeconds) * 1000;
  }

  /** When a step is due, seconds. */
  public double due(int step) {
    return firstBeat + slots.position((long) step) * slotSeconds;
  }
}
