package neckway.hear;

/**
 * One note as the ear heard it.
 *
 * @param index from 0, in the order in which the ear told its notes
 * @param time onset in seconds from the first sample of the take; of a slid or hammered note the
 *     arrival
 * @param midi MIDI note number after the guitar's own tuning offset, as known then, is taken off
 * @param pitch MIDI note number with its fraction, as sounded (A4 = 440 Hz is 69.0)
 * @param start how it began
 * @param fine whether the onset is known finely enough to speak of milliseconds
 * @param levelDbfs peak level of its first 30 ms
 * @param decided time in seconds at which the ear had it, on the same clock as {@code time}
 */
public record HeardNote(
    int index,
    double time,
    int midi,
    double pitch,
    Start start,
    boolean fine,
    double levelDbfs,
    double decided) {
  /**
   * The same note with its pitch as it has since come to be known.
   *
   * @param settled MIDI note number with its fraction, as sounded
   */
  public HeardNote withPitch(double settled) {
    return new HeardNote(index, time, midi, settled, start, fine, levelDbfs, decided);
  }

  /** How a note began. */
  public enum Start {
    /** With an attack: a pick or a finger. */
    PLUCK,
    /** A change of pitch with no attack: hammered on or pulled off. */
    LEGATO,
    /** A change of pitch through the frets between. */
    SLIDE
  }
}
