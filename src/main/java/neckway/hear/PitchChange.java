package neckway.hear;

import neckway.hear.signal.ChangePoint;

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
  private final ChangePoint change;
  private final double[] energy;

  PitchChange(double rateHz) {
    frame = Math.max(4, (int) (FRAME_SECONDS * rateHz));
    frames = (int) (SPAN_SECONDS * rateHz) / frame;
    int framesBefore = (int) (BEFORE_SECONDS * rateHz) / frame;
    int framesAfter = (int) (AFTER_SECONDS * rateHz) / frame;
    energy = new double[frames];
    change = new ChangePoint(framesBefore, framesAfter, 3);
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
    return from + change.find(energy) * frame;
  }

  /**
   * Finds where the sound begins to repeat with the period of the note that sounds now: the arrival
   * of a slid or hammered note. The comb looks forward, so that what came before the arrival does
   * not reach into what comes after it.
   *
   * @param y sound
   * @param to the stretch ends before this index; the note sounds up to there
   * @param periodFrames of the note that sounds now
   * @return the index of the arrival
   */
  int findArrival(float[] y, int to, double periodFrames) {
    int whole = (int) periodFrames;
    float part = (float) (periodFrames - whole);
    int last = to - whole - 2;
    for (int k = 0; k < frames; k++) {
      double sum = 1e-10;
      int end = last - k * frame;
      for (int i = end - frame; i < end; i++) {
        float d = y[i] - (1 - part) * y[i + whole] - part * y[i + whole + 1];
        sum += d * d;
      }
      energy[k] = sum;
    }
    return last - change.find(energy) * frame;
  }

  /** How many times more energy is left after the change than before it. */
  double gain() {
    return change.gain();
  }
}
