package neckway.sound;

/**
 * Whether an output takes sound much faster than it can play it: then nothing plays it, and the
 * line only says that it took it.
 */
final class RateWatch {
  private static final double LEAST_SECONDS_FOR_ONE = 0.5;
  private static final double NANOS = 1e9;

  private final long windowFrames;
  private final double leastNanos;
  private long windowFrom;
  private long windowFromNanos;

  /**
   * @param sampleRate frames a second
   * @param bufferFrames that the line takes at once without playing them
   */
  RateWatch(double sampleRate, int bufferFrames) {
    windowFrames = Math.round(sampleRate) + 2L * bufferFrames;
    leastNanos = LEAST_SECONDS_FOR_ONE * NANOS;
  }

  /** Begins with nothing taken. */
  void start(long nowNanos) {
    windowFrom = 0;
    windowFromNanos = nowNanos;
  }

  /**
   * Looks at what was taken in all: true where more than a second of sound, and two buffers more,
   * went in half a second.
   */
  boolean tooFast(long frames, long nowNanos) {
    if (frames - windowFrom < windowFrames) {
      return false;
    }
    boolean fast = nowNanos - windowFromNanos < leastNanos;
    start(nowNanos);
    windowFrom = frames;
    return fast;
  }
}
