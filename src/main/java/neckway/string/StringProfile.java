package neckway.string;

import neckway.neck.GuitarString;

/**
 * One string of a guitar as it was learnt.
 *
 * @param string its number
 * @param openMidi MIDI note number that it is tuned to
 * @param centsOff how far its own pitch is from that, A4 = 440 Hz
 * @param lnStiffness natural logarithm of the stiffness B of the open string
 * @param spread standard deviation of that logarithm from note to note, above 0
 * @param plucks how many notes it was learnt from
 */
public record StringProfile(
    GuitarString string,
    int openMidi,
    double centsOff,
    double lnStiffness,
    double spread,
    int plucks) {
  /** Growth of ln B from a fret to the next: B doubles every six ({@link #lnStiffnessAt}). */
  public static final double LN_PER_FRET = Math.log(2) / 6;

  public StringProfile {
    if (!(spread > 0)) {
      throw new IllegalArgumentException("a spread of " + spread);
    }
  }

  /**
   * Natural logarithm of B at a fret: B(fret) = B(open) 2^(fret / 6) (Barbancho et al. 2012, as
   * given by Hjerrild and Christensen 2019).
   */
  public double lnStiffnessAt(int fret) {
    return lnStiffness + LN_PER_FRET * fret;
  }
}
