package neckway.hear;

/** The last readings of a pitch that is not the current note's. */
final class PitchReadings {
  private static final int MOST = 32;

  private final double[] pitches = new double[MOST];
  private final long[] frames = new long[MOST];
  private long count;

  void clear() {
    count = 0;
  }

  void add(double pitch, long frame) {
    int at = (int) (count++ % MOST);
    pitches[at] = pitch;
    frames[at] = frame;
  }

  /** How many of the newest, in a row, lie within so many semitones of the newest. */
  int steady(double semitones) {
    int steady = 0;
    while (steady < Math.min(count, MOST)
        && Math.abs(pitches[back(steady)] - pitches[back(0)]) < semitones) {
      steady++;
    }
    return steady;
  }

  /** Whether there are older readings than these newest ones. */
  boolean olderThan(int newest) {
    return newest < count;
  }

  /** The frame of the first of the newest {@code steady} readings. */
  long firstFrame(int steady) {
    return frames[back(steady - 1)];
  }

  private int back(int readings) {
    return (int) ((count - 1 - readings) % MOST);
  }
}
