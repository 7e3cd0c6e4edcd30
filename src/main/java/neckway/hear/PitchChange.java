package neckway.hear;

/**
 * Finds the instant at which a sound stops repeating with a period: the change point, under two
 * variances, of what a comb of that period leaves. For notes that begin without an attack that
 * shows in the spectrum: hammered, pulled, or drowned by an overdriven amp.
 */
final class PitchChange {
  static final double SPAN_SECONDS = 0.140;
  private static final double FRAME_SECONDS = 0.0015;
  private static final double BEFORE_SECONDS = 0.020;
  private static final double AFTER_SECONDS = 0.012;

  private final int frame;
  private final int frames;
  private final int framesBefore;
  private final int framesAfter;
  private final double[] energy;
  private double gain;

  PitchChange(double rateHz) {
    frame = Math.max(4, (int) (FRAME_SECONDS * rateHz));
    frames = (int) (SPAN_SECONDS * rateHz) / frame;
    framesBefore = (int) (BEFORE_SECONDS * rateHz) / frame;
    framesAfter = (int) (AFTER_SECONDS * rateHz) / frame;
    energy = new double[frames];
  }

  /**
   * @param y sound
   * @param to the stretch ends before this index
   * @param periodFrames of the note that was sounding
   * @return the index of the change
   */
  int find(float[] y, int to, double periodFrames) {
    int from = to - frames * frame;
    int whole = (int) periodFrames;
    float part = (float) (periodFrames - whole);
    for (int k = 0; k < frames; k++) {
      double sum = 1e-10;
      for (int i = from + k * frame; i < from + (k + 1) * frame; i++) {
        float d = y[i] - (1 - part) * y[i - whole] - part * y[i - whole - 1];
        sum += d * d;
      }
      energy[k] = sum;
    }
    double best = Double.NEGATIVE_INFINITY;
    int at = frames / 2;
    for (int k = 6; k < frames - 3; k++) {
      int before = Math.min(k, framesBefore);
      int after = Math.min(frames - k, framesAfter);
      double a = 0;
      double b = 0;
      for (int j = k - before; j < k; j++) {
        a += energy[j];
      }
      for (int j = k; j < k + after; j++) {
        b += energy[j];
      }
      double all = (a + b) / (before + after);
      a /= before;
      b /= after;
      double ratio = (before + after) * Math.log(all) - before * Math.log(a) - after * Math.log(b);
      if (b > a && ratio > best) {
        best = ratio;
        at = k;
        gain = b / a;
      }
    }
    return from + at * frame;
  }

  /** How many times more energy is left after the change than before it. */
  double gain() {
    return gain;
  }
}
