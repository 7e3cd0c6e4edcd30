package neckway.hear.signal;

import java.util.OptionalDouble;

/**
 * The last three bursts that came alone, and the question whether they keep a beat: a metronome
 * sounds the same and comes evenly, to a fraction of a millisecond, which no hand does.
 */
final class LoneBursts {
  static final int BURSTS = 3;

  /** Two distances of a metronome's clicks differ by less than this; a hand's, by some 10 ms. */
  static final double EVEN_SECONDS = 0.002;

  /** Beats of metronomes, 300 to 20 a minute; common practice, no source. */
  private static final double SHORTEST_SECONDS = 0.2;

  private static final double LONGEST_SECONDS = 3;

  /** The last two bursts correlate by this, at least; the first may be a bar's accent. */
  private static final double LEAST_LIKENESS = 0.8;

  /** Two are held against each other a quarter of a frame at a time. */
  private static final int STEPS = 4;

  /** Frames of sound that are compared. */
  private final int compared;

  private final int mostShift;
  private final int margin;
  private final double rateHz;
  private final float[][] sounds = new float[BURSTS][];
  private final long[] frames = new long[BURSTS];
  private int count;

  /**
   * @param length of a burst's sound that is kept, in frames
   * @param mostShift frames by which one is shifted against another, at most
   * @param compared first frames that are held against each other
   */
  LoneBursts(double rateHz, int length, int mostShift, int compared) {
    this.rateHz = rateHz;
    this.mostShift = mostShift;
    // the third may lie off a beat by the unevenness and two shifts, and is shifted then
    margin = 4 * mostShift + (int) Math.ceil(EVEN_SECONDS * rateHz);
    this.compared = compared;
    for (int i = 0; i < BURSTS; i++) {
      sounds[i] = new float[length + 2 * margin];
    }
  }

  /**
   * Takes another burst and drops the oldest.
   *
   * @param x sound, with the margin on both sides of the burst within it
   * @param at index of the burst
   * @param frame of the burst
   */
  void add(float[] x, int at, long frame) {
    float[] oldest = sounds[0];
    for (int i = 1; i < BURSTS; i++) {
      sounds[i - 1] = sounds[i];
      frames[i - 1] = frames[i];
    }
    sounds[BURSTS - 1] = oldest;
    frames[BURSTS - 1] = frame;
    System.arraycopy(x, at - margin, oldest, 0, oldest.length);
    count = Math.min(BURSTS, count + 1);
  }

  /** Frames from one of them to the next, if they are a metronome's. */
  OptionalDouble beatFrames() {
    if (count < BURSTS) {
      return OptionalDouble.empty();
    }
    long first = frames[1] - frames[0];
    long second = frames[2] - frames[1];
    boolean even = Math.abs(second - first) < EVEN_SECONDS * rateHz;
    boolean beat = second > SHORTEST_SECONDS * rateHz && second < LONGEST_SECONDS * rateHz;
    return even && beat ? alike(second) : OptionalDouble.empty();
  }

  /**
   * The distance at which the last two are most alike, if they are alike at all. The quiet before
   * them is compared too, and so are parts of a frame: a tone is much like itself a period on.
   */
  private OptionalDouble alike(long distance) {
    double most = LEAST_LIKENESS;
    OptionalDouble best = OptionalDouble.empty();
    for (int step = -mostShift * STEPS; step <= mostShift * STEPS; step++) {
      double shift = (double) step / STEPS;
      double likeness = likeness(shift);
      if (likeness > most) {
        most = likeness;
        best = OptionalDouble.of(distance + shift);
      }
    }
    return best;
  }

  private double likeness(double shift) {
    int whole = (int) Math.floor(shift);
    float part = (float) (shift - whole);
    double dot = 0;
    double a = 1e-12;
    double b = 1e-12;
    for (int i = margin - mostShift; i < margin + compared; i++) {
      float last = sounds[2][i + whole] * (1 - part) + sounds[2][i + whole + 1] * part;
      float before = sounds[1][i];
      dot += last * before;
      a += last * last;
      b += before * before;
    }
    return dot / Math.sqrt(a * b);
  }

  /** Frames that are kept before a burst and after it. */
  int margin() {
    return margin;
  }

  /** Sound of one of them, oldest first, with the margin before it. */
  float[] sound(int index) {
    return sounds[index];
  }

  /** Its frame. */
  long frame(int index) {
    return frames[index];
  }
}
