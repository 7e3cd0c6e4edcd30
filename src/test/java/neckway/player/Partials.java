package neckway.player;

/** Measures partials in samples: a windowed Fourier sum at any frequency, and its maximum. */
public final class Partials {
  private Partials() {}

  /** Amplitude at a frequency over a stretch of samples, Hann window. */
  public static double amplitude(float[] samples, int from, int length, double hz, double rate) {
    double re = 0;
    double im = 0;
    double angle = 2 * Math.PI * hz / rate;
    for (int n = 0; n < length; n++) {
      double x = samples[from + n] * (1 - Math.cos(2 * Math.PI * n / length));
      re += x * Math.cos(angle * n);
      im += x * Math.sin(angle * n);
    }
    return 2 * Math.hypot(re, im) / length;
  }

  /** Where the amplitude is greatest within so many cents of a frequency. */
  public static double peakHz(
      float[] samples, int from, int length, double nearHz, double cents, double rate) {
    double low = nearHz * Math.pow(2, -cents / 1200);
    double high = nearHz * Math.pow(2, cents / 1200);
    for (int round = 0; round < 26; round++) {
      double a = low + (high - low) / 3;
      double b = high - (high - low) / 3;
      if (amplitude(samples, from, length, a, rate) < amplitude(samples, from, length, b, rate)) {
        low = a;
      } else {
        high = b;
      }
    }
    return (low + high) / 2;
  }

  public static double cents(double hz, double referenceHz) {
    return 1200 * Math.log(hz / referenceHz) / Math.log(2);
  }
}
