package neckway.sound;

/**
 * Whether sound was dropped unseen: a device that gave less sound than time has passed. A program
 * that is stopped, or a computer that sleeps, finds its buffer fresh and not full, so that only the
 * clock tells. For one thread; the first frame begins it.
 */
final class MissedTime {
  /** What one look may lag behind another is less, however large a device's blocks are. */
  private static final double LAG_SECONDS = 0.25;

  /** The least lag of so long is the true one: sound that is merely late has come by then. */
  private static final double WINDOW_SECONDS = 1;

  private static final double NANOS = 1e9;

  private final double sampleRate;
  private boolean begun;
  private long begunNanos;
  private long frames;
  private double windowEnds = WINDOW_SECONDS;
  private double leastLag = Double.POSITIVE_INFINITY;
  private double leastLagBefore = Double.POSITIVE_INFINITY;

  MissedTime(double sampleRate) {
    this.sampleRate = sampleRate;
  }

  /**
   * Frames were read; 1 where it shows by now that some were dropped, told once for each time.
   *
   * @param count 1 or more
   */
  int read(int count, long nowNanos) {
    if (!begun) {
      begun = true;
      begunNanos = nowNanos;
    }
    frames += count;
    double seconds = (nowNanos - begunNanos) / NANOS;
    leastLag = Math.min(leastLag, seconds - frames / sampleRate);
    if (seconds < windowEnds) {
      return 0;
    }
    boolean dropped = leastLag > leastLagBefore + LAG_SECONDS;
    leastLagBefore = leastLag;
    leastLag = Double.POSITIVE_INFINITY;
    windowEnds = seconds + WINDOW_SECONDS;
    return dropped ? 1 : 0;
  }
}
