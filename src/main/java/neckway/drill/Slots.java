package neckway.drill;

/**
 * How the slots in which notes are due lie between the beats. Slot 0 is where the first step is
 * due. Slots of a pair, counted from the first beat on, share its time: the first one takes {@code
 * swing} of it.
 *
 * @param swing 0.5 is straight, two thirds the long-short of a triplet
 * @param offset slots from the first beat to the first step
 */
public record Slots(double swing, int offset) {
  /** Straight, from the first beat on. */
  public static final Slots EVEN = new Slots(Pulse.STRAIGHT, 0);

  /** The same from the same slot on, with another share for the first of a pair. */
  public Slots withSwing(double otherSwing) {
    return new Slots(otherSwing, offset);
  }

  /** Whether a slot is the second of its pair. */
  public boolean isSecond(long slot) {
    return Math.floorMod(slot + offset, 2) == 1;
  }

  /** How much later than straight a slot comes, in slots. */
  public double lag(long slot) {
    return isSecond(slot) ? 2 * swing - 1 : 0;
  }

  /** Slots from the first beat to a slot. */
  public double position(long slot) {
    return offset + slot + lag(slot);
  }

  /** The same of a moment between two slots, so much of the way from one to the other. */
  public double position(double slot) {
    long before = (long) Math.floor(slot);
    double part = slot - before;
    return part == 0
        ? position(before)
        : offset + slot + (1 - part) * lag(before) + part * lag(before + 1);
  }

  /** Slots from one slot to the next one. */
  public double gapBefore(long slot) {
    return 1 + lag(slot) - lag(slot - 1);
  }

  /**
   * The slot nearest to a moment.
   *
   * @param position of the moment, slots from the first beat
   */
  public long nearest(double position) {
    long nearest = Math.round(position - offset);
    if (swing == Pulse.STRAIGHT) {
      return nearest;
    }
    for (long slot : new long[] {nearest - 1, nearest + 1}) {
      if (Math.abs(position(slot) - position) < Math.abs(position(nearest) - position)) {
        nearest = slot;
      }
    }
    return nearest;
  }
}
