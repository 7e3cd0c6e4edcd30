package neckway.player.surroundings;

/** Peaks and decibels. */
public final class Levels {
  private Levels() {}

  public static double gain(double db) {
    return Math.pow(10, db / 20);
  }

  static double peak(float[] samples) {
    float peak = 0;
    for (float s : samples) {
      peak = Math.max(peak, Math.abs(s));
    }
    return peak;
  }

  /** Scales to a peak; silence stays silence. */
  public static void toPeak(float[] samples, double peak) {
    double now = peak(samples);
    if (now > 0) {
      float gain = (float) (peak / now);
      for (int n = 0; n < samples.length; n++) {
        samples[n] *= gain;
      }
    }
  }
}
