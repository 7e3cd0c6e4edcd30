package neckway.hear.signal;

/** The levels of a take as it goes by: its peak, its quiet, its loudest note. */
public final class SoundLevels {
  private static final double FALL = 0.05;
  private static final double RISE = 1.0003;

  private float peak;
  private double noise = Double.NaN;
  private double loudest;

  /** Takes {@code samples[from, to)}. */
  public void samples(float[] samples, int from, int to) {
    float top = peak;
    for (int i = from; i < to; i++) {
      top = Math.max(top, Math.abs(samples[i]));
    }
    peak = top;
  }

  /**
   * The quiet falls at once and rises slowly, so that notes do not lift it.
   *
   * @param power mean square of the newest hop
   */
  public void hop(double power) {
    if (Double.isNaN(noise)) {
      noise = power;
    } else if (power < noise) {
      noise += FALL * (power - noise);
    } else {
      noise = Math.min(power, RISE * noise + 1e-13);
    }
  }

  /**
   * @param power mean square of a note when it is told
   */
  public void note(double power) {
    loudest = Math.max(loudest, power);
  }

  /** Mean square of the quiet. */
  public double noise() {
    return noise;
  }

  /** Mean square of the loudest note so far. */
  public double loudest() {
    return loudest;
  }

  public double peakDbfs() {
    return Math.max(-120, 20 * Math.log10(peak + 1e-9));
  }

  public double noiseDbfs() {
    return Double.isNaN(noise) ? -120 : Math.max(-120, 10 * Math.log10(noise + 1e-12));
  }
}
