package neckway.hear;

/**
 * Takes the sample rate down by a whole number with a linear-phase low-pass (windowed sinc,
 * Blackman, cut at 0.45 of the new rate), sample by sample and without allocation.
 */
final class Decimator {
  /** Taps for each unit of the factor; the delay is half the taps. */
  private static final int TAPS_PER_FACTOR = 16;

  private final int factor;
  private final float[] taps;
  private final float[] history;
  private int at;
  private int phase;

  /**
   * @param factor 1 (a wire) or more
   */
  Decimator(int factor) {
    if (factor < 1) {
      throw new IllegalArgumentException("factor " + factor);
    }
    this.factor = factor;
    int count = factor == 1 ? 1 : TAPS_PER_FACTOR * factor + 1;
    taps = new float[count];
    history = new float[2 * count];
    if (factor == 1) {
      taps[0] = 1;
      return;
    }
    double cut = 0.45 / factor;
    double sum = 0;
    for (int i = 0; i < count; i++) {
      double t = i - (count - 1) / 2.0;
      double x = 2 * Math.PI * i / (count - 1);
      double window = 0.42 - 0.5 * Math.cos(x) + 0.08 * Math.cos(2 * x);
      double sinc = t == 0 ? 2 * cut : Math.sin(2 * Math.PI * cut * t) / (Math.PI * t);
      taps[i] = (float) (window * sinc);
      sum += taps[i];
    }
    for (int i = 0; i < count; i++) {
      taps[i] /= (float) sum;
    }
  }

  /** Frames at the incoming rate by which what comes out is late. */
  int delayFrames() {
    return (taps.length - 1) / 2;
  }

  /** Takes one sample; true when a sample of the lower rate is ready in {@link #value()}. */
  boolean accept(float sample) {
    history[at] = sample;
    history[at + taps.length] = sample;
    at = at + 1 == taps.length ? 0 : at + 1;
    phase = phase + 1 == factor ? 0 : phase + 1;
    return phase == 0;
  }

  /** The newest sample of the lower rate. */
  float value() {
    int first = at;
    int last = at + taps.length - 1;
    int half = taps.length / 2;
    float a = 0;
    float b = 0;
    float c = 0;
    float d = 0;
    int i = 0;
    // the taps are the same from both ends
    for (; i + 3 < half; i += 4) {
      a += taps[i] * (history[first + i] + history[last - i]);
      b += taps[i + 1] * (history[first + i + 1] + history[last - i - 1]);
      c += taps[i + 2] * (history[first + i + 2] + history[last - i - 2]);
      d += taps[i + 3] * (history[first + i + 3] + history[last - i - 3]);
    }
    for (; i < half; i++) {
      a += taps[i] * (history[first + i] + history[last - i]);
    }
    return a + b + (c + d) + taps[half] * history[first + half];
  }
}
