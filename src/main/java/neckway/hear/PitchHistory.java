package neckway.hear;

/** The last estimates of a pitch that is not the current note's. */
final class PitchHistory {
  private static final int MOST = 32;
  private static final double BETWEEN_SEMITONES = 0.4;

  private final double[] pitches = new double[MOST];
  private final long[] frames = new long[MOST];
  private long count;
  private long runFrom;

  void clear() {
    count = 0;
    runFrom = 0;
  }

  /** The next estimate does not follow on the last one. */
  void interrupt() {
    runFrom = count;
  }

  void add(double pitch, long frame) {
    int at = (int) (count++ % MOST);
    pitches[at] = pitch;
    frames[at] = frame;
  }

  /** How many of the newest, in a row, lie within so many semitones of the newest. */
  int steady(double semitones) {
    int steady = 0;
    while (steady < Math.min(count - runFrom, MOST)
        && Math.abs(pitches[back(steady)] - pitches[back(0)]) < semitones) {
      steady++;
    }
    return steady;
  }

  /**
   * Whether an estimate older than these newest ones lies between two pitches.
   *
   * @param from pitch
   * @param to pitch
   * @param newest estimates that do not count
   * @param since frame from which on an estimate counts
   */
  boolean between(double from, double to, int newest, long since) {
    double low = Math.min(from, to) + BETWEEN_SEMITONES;
    double high = Math.max(from, to) - BETWEEN_SEMITONES;
    for (int i = newest; i < Math.min(count, MOST); i++) {
      int at = back(i);
      if (frames[at] >= since && pitches[at] > low && pitches[at] < high) {
        return true;
      }
    }
    return false;
  }

  /** The frame of the first of the newest {@code steady} estimates. */
  long firstFrame(int steady) {
    return frames[back(steady - 1)];
  }

  private int back(int estimates) {
    return (int) ((count - 1 - estimates) % MOST);
  }
}
