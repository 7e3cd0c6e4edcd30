package neckway.sound;

/**
 * Whether a device still moves, by time alone: a count of frames that stands still for too long
 * means that the device is gone, whatever its line says. It never asks the line, because a line
 * whose server has died may keep its lock for ever.
 */
final class Alive {
  private static final double NANOS = 1e9;

  private final double patienceSeconds;
  private final double firstPatienceSeconds;
  private long framesSeen;
  private long seenAtNanos;

  /**
   * @param patienceSeconds how long the count may stand still
   * @param firstPatienceSeconds how long until the first frame: devices take a while to wake
   */
  Alive(double patienceSeconds, double firstPatienceSeconds) {
    this.patienceSeconds = patienceSeconds;
    this.firstPatienceSeconds = firstPatienceSeconds;
  }

  /** Begins to watch a count that is 0. */
  synchronized void start(long nowNanos) {
    framesSeen = 0;
    seenAtNanos = nowNanos;
  }

  /** Looks at the count; true where it has stood still for too long. */
  synchronized boolean gone(long frames, long nowNanos) {
    if (frames != framesSeen) {
      framesSeen = frames;
      seenAtNanos = nowNanos;
    }
    double patience = framesSeen == 0 ? firstPatienceSeconds : patienceSeconds;
    return nowNanos - seenAtNanos > patience * NANOS;
  }
}
