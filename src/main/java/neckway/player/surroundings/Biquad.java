package neckway.player.surroundings;

/** Second-order filter, as in the well-known cookbook formulae of R. Bristow-Johnson. */
public final class Biquad {
  private double b0;
  private double b1;
  private double b2;
  private double a1;
  private double a2;
  private double z1;
  private double z2;

  private Biquad() {}

  public static Biquad lowPass(double hz, double q, double rate) {
    double w = 2 * Math.PI * Math.min(hz, 0.45 * rate) / rate;
    double c = (1 - Math.cos(w)) / 2;
    return new Biquad().set(c, 2 * c, c, w, q);
  }

  public static Biquad highPass(double hz, double q, double rate) {
    double w = 2 * Math.PI * Math.min(hz, 0.45 * rate) / rate;
    double c = (1 + Math.cos(w)) / 2;
    return new Biquad().set(c, -2 * c, c, w, q);
  }

  /** Peak gain 1. */
  public static Biquad bandPass(double hz, double q, double rate) {
    return new Biquad().centre(hz, q, rate);
  }

  /** A bell of so many dB. */
  public static Biquad bell(double hz, double q, double db, double rate) {
    double w = 2 * Math.PI * Math.min(hz, 0.45 * rate) / rate;
    double gain = Math.pow(10, db / 40);
    double alpha = Math.sin(w) / (2 * q);
    Biquad f = new Biquad();
    double a0 = 1 + alpha / gain;
    f.b0 = (1 + alpha * gain) / a0;
    f.b1 = -2 * Math.cos(w) / a0;
    f.b2 = (1 - alpha * gain) / a0;
    f.a1 = f.b1;
    f.a2 = (1 - alpha / gain) / a0;
    return f;
  }

  /** Makes this a band pass about another frequency; its memory is kept. */
  public Biquad centre(double hz, double q, double rate) {
    double w = 2 * Math.PI * Math.min(hz, 0.45 * rate) / rate;
    double alpha = Math.sin(w) / (2 * q);
    return set(alpha, 0, -alpha, w, q);
  }

  private Biquad set(double n0, double n1, double n2, double w, double q) {
    double alpha = Math.sin(w) / (2 * q);
    double a0 = 1 + alpha;
    b0 = n0 / a0;
    b1 = n1 / a0;
    b2 = n2 / a0;
    a1 = -2 * Math.cos(w) / a0;
    a2 = (1 - alpha) / a0;
    return this;
  }

  public double next(double x) {
    double y = b0 * x + z1;
    z1 = b1 * x - a1 * y + z2;
    z2 = b2 * x - a2 * y;
    return y;
  }

  public void run(float[] samples) {
    for (int n = 0; n < samples.length; n++) {
      samples[n] = (float) next(samples[n]);
    }
  }
}
