package neckway.hear;

/** The levels of a take as it goes by: its peak, its quiet, its loudest note. */
final class SoundLevels {
  private static final double FALL = 0.05;
  private static final double RISE = 1.0003;

  private float peak;
  private double noise = Double.NaN;
  private double loudest;

  /** Takes {@code samples[from, to)}. */
  void samples(float[] samples, int from, int to) {
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
  void hop(double power) {
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
  void note(double power) {
    loudest = Math.max(loudest, power);
  }

  /** Mean square of the quiet. */
  double noise() {
    return noise;
  }

  /** Mean square of the loudest note so far. */
  double loudest() {
    return loudest;
  }

  double peakDbfs() {
    return Math.max(-120, 20 * Math.log10(peak + 1e-9));
  }

  double noiseDbfs() {
    return Double.isNaN(noise) ? -120 : Math.max(-120, 10 * Math.log10(noise + 1e-12));
  }
}
