package neckway.hear;

import java.util.OptionalDouble;

/**
 * How far the whole guitar is from A4 = 440 Hz: the circular mean of the pitches' distances from
 * the nearest semitone (a mean of directions; Mardia and Jupp, "Directional Statistics", 2000, ch.
 * 2).
 */
final class TuningOffset {
  /** Notes before the offset is told. */
  static final int LEAST_NOTES = 3;

  /** Weight, in notes, of the belief that a guitar is in tune. */
  private static final double PRIOR = 1;

  private double cosine;
  private double sine;
  private int notes;

  /**
   * @param pitch MIDI note number with its fraction
   */
  void add(double pitch) {
    double angle = 2 * Math.PI * (pitch - Math.rint(pitch));
    cosine += Math.cos(angle);
    sine += Math.sin(angle);
    notes++;
  }

  /** Semitones to take off a pitch, -0.5 to 0.5; drawn to 0 while few notes have told it. */
  double semitones() {
    return Math.atan2(sine, cosine + PRIOR) / (2 * Math.PI);
  }

  /** Cents, -50 to 50, once {@value #LEAST_NOTES} notes have told it. */
  OptionalDouble cents() {
    return notes < LEAST_NOTES
        ? OptionalDouble.empty()
        : OptionalDouble.of(100 * Math.atan2(sine, cosine) / (2 * Math.PI));
  }

  boolean known() {
    return notes >= LEAST_NOTES;
  }
}
