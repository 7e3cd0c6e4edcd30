package neckway.hear;

import neckway.hear.signal.SoundEnergy;

/**
 * Whether a stretch of sound is no more than the last notes still ringing: a comb of the newest
 * one's period, alone or one after another with a comb of an older one's, leaves next to nothing.
 */
final class RingingNotes {
  /** Share of the energy that is next to nothing. Set on development takes. */
  private static final double MOST_LEFT = 0.12;

  private RingingNotes() {}

  /**
   * @param y sound, {@code [from, to)} is asked about
   * @param periods in frames, of the newest note first; 0 for none
   */
  static boolean explain(float[] y, int from, int to, double[] periods) {
    double most = MOST_LEFT * SoundEnergy.of(y, from, to);
    boolean explained = left(y, from, to, periods[0]) < most;
    for (int back = 1; back < periods.length && !explained; back++) {
      explained = periods[back] > 0 && left(y, from, to, periods[0], periods[back]) < most;
    }
    return explained;
  }

  private static double left(float[] y, int from, int to, double period) {
    double sum = 0;
    for (int i = from; i < to; i++) {
      double d = y[i] - at(y, i - period);
      sum += d * d;
    }
    return sum;
  }

  private static double left(float[] y, int from, int to, double period, double older) {
    double sum = 0;
    for (int i = from; i < to; i++) {
      double d = y[i] - at(y, i - period);
      d -= at(y, i - older) - at(y, i - older - period);
      sum += d * d;
    }
    return sum;
  }

  /** Between samples by a straight line. */
  private static double at(float[] y, double i) {
    int whole = (int) i;
    double part = i - whole;
    return y[whole] * (1 - part) + y[whole + 1] * part;
  }
}
