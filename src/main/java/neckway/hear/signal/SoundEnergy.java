package neckway.hear.signal;

/** Energy of a stretch of sound. */
public final class SoundEnergy {
  private SoundEnergy() {}

  /** Sum of the squares of {@code x[from, to)}. */
  public static double of(float[] x, int from, int to) {
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum += x[i] * x[i];
    }
    return sum;
  }

  /** Mean of the squares of {@code x[from, to)}. */
  public static double mean(float[] x, int from, int to) {
    return of(x, from, to) / (to - from);
  }
}
