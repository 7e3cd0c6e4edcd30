package neckway.hear.beside;

/**
 * Turns down what is left of a leak while nobody plays: as long as all that is left is so far under
 * the leak that was there that it may be the rest of it. The player's first stroke ends that; while
 * a note sounds nothing is changed. In echo control this is called a nonlinear processor.
 */
final class RestSuppressor {
  /** Power left of the leak, as a share, at most. See docs/decisions/beside.md. */
  static final double REST_SHARE = 0.06;

  /** What is turned down is turned down by so much: 40 dB. */
  static final float LEAST_GAIN = 0.01f;

  private static final double HOP_SECONDS = 0.01;

  /** Hops whose power is looked at together: a stroke is seen coming by all but one of them. */
  private static final int WINDOW_HOPS = 4;

  /** After sound of the player's own nothing is turned down for so long. */
  private static final double HOLD_SECONDS = 0.25;

  /** A leak counts on after it has ended: it falls by 60 dB in half a second. */
  private static final double FALL_SECONDS = 0.5;

  /** The gain moves to its new value in a quarter of a hop. */
  private static final float GLIDE = 4;

  private final int hop;
  private final int holdHops;
  private final double fall;

  RestSuppressor(double rate) {
    hop = Math.max(1, (int) (HOP_SECONDS * rate));
    holdHops = (int) (HOLD_SECONDS / HOP_SECONDS);
    fall = Math.pow(10, -6 * HOP_SECONDS / FALL_SECONDS);
  }

  /**
   * Adds what is to be turned down to the leak.
   *
   * @param leak what is to be taken off the take; changed
   * @param take as it was heard
   */
  void addTo(float[] leak, float[] take) {
    int frames = Math.min(take.length, leak.length);
    int hops = (frames + hop - 1) / hop;
    double[] leaked = new double[hops];
    double[] left = new double[hops];
    for (int i = 0; i < frames; i++) {
      float rest = take[i] - leak[i];
      leaked[i / hop] += leak[i] * leak[i];
      left[i / hop] += rest * rest;
    }
    double held = 0;
    int open = 0;
    float gain = LEAST_GAIN;
    for (int h = 0; h < hops; h++) {
      int from = h * hop;
      held = Math.max(window(leaked, h, WINDOW_HOPS), fall * held);
      // what is open now stays so for a while: the leak of that while counts as well
      double soon = Math.max(held, loudestSoon(leaked, h));
      open = window(left, h, WINDOW_HOPS) > REST_SHARE * soon ? holdHops : Math.max(0, open - 1);
      float target = open > 0 ? 1 : LEAST_GAIN;
      int end = Math.min(frames, from + hop);
      for (int i = from; i < end; i++) {
        gain += (target - gain) * GLIDE / hop;
        leak[i] += (1 - gain) * (take[i] - leak[i]);
      }
    }
  }

  private static double window(double[] power, int from, int count) {
    double sum = 0;
    for (int h = from; h < Math.min(power.length, from + count); h++) {
      sum += power[h];
    }
    return sum;
  }

  private double loudestSoon(double[] leaked, int from) {
    double most = 0;
    for (int h = from; h < from + holdHops; h++) {
      most = Math.max(most, window(leaked, h, WINDOW_HOPS));
    }
    return most;
  }
}
