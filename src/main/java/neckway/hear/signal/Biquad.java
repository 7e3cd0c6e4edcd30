package neckway.hear.signal;

/** A second-order Butterworth filter in direct form I, by the bilinear transform. */
public final class Biquad {
  private final double b0;
  private final double b1;
  private final double a1;
  private final double a2;
  private double x1;
  private double x2;
  private double y1;
  private double y2;

  private Biquad(double b0, double b1, double a1, double a2) {
    this.b0 = b0;
    this.b1 = b1;
    this.a1 = a1;
    this.a2 = a2;
  }

  static Biquad lowPass(double cutHz, double sampleRateHz) {
    double w = Math.tan(Math.PI * cutHz / sampleRateHz);
    double n = 1 / (1 + Math.sqrt(2) * w + w * w);
    return new Biquad(
        w * w * n, 2 * w * w * n, 2 * (w * w - 1) * n, (1 - Math.sqrt(2) * w + w * w) * n);
  }

  static Biquad highPass(double cutHz, double sampleRateHz) {
    double w = Math.tan(Math.PI * cutHz / sampleRateHz);
    double n = 1 / (1 + Math.sqrt(2) * w + w * w);
    return new Biquad(n, -2 * n, 2 * (w * w - 1) * n, (1 - Math.sqrt(2) * w + w * w) * n);
  }

  double next(double x) {
    double y = b0 * (x + x2) + b1 * x1 - a1 * y1 - a2 * y2;
    x2 = x1;
    x1 = x;
    y2 = y1;
    y1 = y;
    return y;
  }
}
