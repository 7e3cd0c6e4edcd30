package neckway.string;

import neckway.neck.GuitarString;

/**
 * What notes of runs have taught of one string.
 *
 * @param string which
 * @param notes how many, at least 1
 * @param lnStiffness mean of the natural logarithm of B, brought down to the open string
 */
public record Lesson(GuitarString string, int notes, double lnStiffness) {
  /** However many runs there were, the calibration keeps a say. */
  static final int MOST_NOTES = 40;

  public Lesson {
    if (notes < 1 || !Double.isFinite(lnStiffness)) {
      throw new IllegalArgumentException(notes + " notes of ln B " + lnStiffness);
    }
  }

  /** Both together. */
  public Lesson and(Lesson other) {
    int all = notes + other.notes;
    return new Lesson(string, all, (notes * lnStiffness + other.notes * other.lnStiffness) / all);
  }

  /**
   * A string's ln B by its calibration and by this: their mean, weighed by their notes, and never
   * farther from the calibration than the string strays from note to note. So runs sharpen what is
   * known and cannot carry it away.
   *
   * @param calibrated the string as the calibration learnt it
   */
  public double with(StringProfile calibrated) {
    int plucks = Math.max(1, calibrated.plucks());
    int weight = Math.min(notes, MOST_NOTES);
    double off = weight * (lnStiffness - calibrated.lnStiffness()) / (plucks + weight);
    double most = calibrated.spread();
    return calibrated.lnStiffness() + Math.max(-most, Math.min(most, off));
  }
}
