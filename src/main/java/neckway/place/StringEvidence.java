package neckway.place;

import java.util.Arrays;
import neckway.neck.GuitarString;

/** How well the sound of one note fits each string that has its pitch. */
public final class StringEvidence {
  private final double[] logByNumber;

  /**
   * @param logByNumber logarithm of the likelihood by string number less one, up to a constant;
   *     negative infinity where the string does not have the pitch
   */
  public StringEvidence(double[] logByNumber) {
    for (double log : logByNumber) {
      if (Double.isNaN(log) || log == Double.POSITIVE_INFINITY) {
        throw new IllegalArgumentException("a log-likelihood of " + log);
      }
    }
    this.logByNumber = logByNumber.clone();
  }

  /** Logarithm of the likelihood of a string, up to a constant. */
  public double log(GuitarString string) {
    int index = string.number() - 1;
    return index < logByNumber.length ? logByNumber[index] : Double.NEGATIVE_INFINITY;
  }

  @Override
  public String toString() {
    return Arrays.toString(logByNumber);
  }
}
