package neckway.hear.beside;

/**
 * Sound read at another rate than it was written, or at one a few millionths off: each sample is a
 * sum under a windowed sinc (Smith and Gossett, "A flexible sampling-rate conversion method",
 * ICASSP 1984; Hann window).
 */
public final class AtRate {
  /** Zero crossings of the sinc on each side. */
  private static final int CROSSINGS = 16;

  /** Entries of the table from one crossing to the next. */
  private static final int FINE = 512;

  /** Share of the lower rate's half that is kept. */
  private static final double KEPT = 0.95;

  private static final float[] TABLE = table();

  private AtRate() {}

  private static float[] table() {
    float[] table = new float[CROSSINGS * FINE + 2];
    for (int i = 0; i < table.length; i++) {
      double x = i / (double) FINE;
      double sinc = i == 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
      double hann = x < CROSSINGS ? 0.5 + 0.5 * Math.cos(Math.PI * x / CROSSINGS) : 0;
      table[i] = (float) (sinc * hann);
    }
    return table;
  }

  /** The same sound at another rate, both in Hz. */
  public static float[] of(float[] sound, double rate, double otherRate) {
    return rate == otherRate
        ? sound
        : read(sound, 0, rate / otherRate, (int) Math.ceil(sound.length * otherRate / rate));
  }

  /**
   * Reads sound at places that lie evenly.
   *
   * @param sound to be read; silent before and after
   * @param first place of the first sample read, in samples of {@code sound}
   * @param step from one place to the next, more than 0
   * @param count how many
   */
  static float[] read(float[] sound, double first, double step, int count) {
    double band = KEPT * Math.min(1, 1 / step);
    double reach = CROSSINGS / band;
    float[] out = new float[count];
    for (int n = 0; n < count; n++) {
      double at = first + n * step;
      int from = (int) Math.max(0, Math.ceil(at - reach));
      int to = (int) Math.min(sound.length - 1, Math.floor(at + reach));
      double sum = 0;
      for (int i = from; i <= to; i++) {
        double place = Math.abs(i - at) * band * FINE;
        int entry = (int) place;
        float part = (float) (place - entry);
        sum += sound[i] * (TABLE[entry] + part * (TABLE[entry + 1] - TABLE[entry]));
      }
      out[n] = (float) (sum * band);
    }
    return out;
  }
}
