package neckway.bench;

/** Samples between samples, by a windowed sinc of 16 points on either side. */
final class Sinc {
  private static final int HALF = 16;

  private Sinc() {}

  static double at(float[] samples, double position) {
    int base = (int) Math.floor(position);
    double sum = 0;
    for (int k = base - HALF + 1; k <= base + HALF; k++) {
      if (k >= 0 && k < samples.length) {
        double x = position - k;
        double sinc = x == 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
        double cos = Math.cos(0.5 * Math.PI * x / HALF);
        sum += samples[k] * sinc * cos * cos;
      }
    }
    return sum;
  }
}
