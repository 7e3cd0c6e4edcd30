package neckway.hear.beside;

/**
 * Takes the leak out as it comes and turns down what is left of it while nobody plays, as {@link
 * RestSuppressor} does with a whole take. It looks one hop ahead, so that a stroke is whole; that
 * is all its delay. How loud the leak will be it does not ask, so it is a little sooner taken for
 * the player's.
 */
final class LiveRest {
  private static final double HOP_SECONDS = 0.01;

  /** After sound of the player's own nothing is turned down for so long. */
  private static final double HOLD_SECONDS = 0.25;

  /** A leak counts on after it has ended: it falls by 60 dB in half a second. */
  private static final double FALL_SECONDS = 0.5;

  /** The gain moves to its new value in a quarter of a hop. */
  private static final float GLIDE = 4;

  private final int hop;
  private final int holdHops;
  private final double fall;
  private final float[] left;
  private int filled;
  private double leftPower;
  private double leakPower;
  private double held;
  private int open;
  private float gain = RestSuppressor.LEAST_GAIN;

  LiveRest(double rate) {
    hop = Math.max(1, (int) (HOP_SECONDS * rate));
    holdHops = (int) (HOLD_SECONDS / HOP_SECONDS);
    fall = Math.pow(10, -6 * HOP_SECONDS / FALL_SECONDS);
    left = new float[hop];
  }

  int delayFrames() {
    return hop;
  }

  /** Takes some samples and gives on each hop that they fill. */
  void process(float[] heard, float[] leak, int from, int count, LiveRemover.Sink out) {
    for (int i = from; i < from + count; i++) {
      float rest = heard[i] - leak[i];
      left[filled] = rest;
      leftPower += rest * rest;
      leakPower += leak[i] * leak[i];
      filled++;
      if (filled == hop) {
        giveOn(out);
      }
    }
  }

  private void giveOn(LiveRemover.Sink out) {
    held = Math.max(leakPower, fall * held);
    open = leftPower > RestSuppressor.REST_SHARE * held ? holdHops : Math.max(0, open - 1);
    float target = open > 0 ? 1 : RestSuppressor.LEAST_GAIN;
    for (int i = 0; i < filled; i++) {
      gain += (target - gain) * GLIDE / hop;
      left[i] *= gain;
    }
    out.take(left, 0, filled);
    filled = 0;
    leftPower = 0;
    leakPower = 0;
  }

  /** Gives on what is left of a hop. */
  void finish(LiveRemover.Sink out) {
    if (filled > 0) {
      giveOn(out);
    }
  }
}
