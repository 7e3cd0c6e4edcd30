package neckway.hear.signal;

/**
 * Finds the instant of an attack in a stretch of sound: the change point of the energy of its
 * second difference under two variances (maximum likelihood; Basseville and Nikiforov, "Detection
 * of Abrupt Changes", 1993, the change in variance of a Gaussian). Where the note before is still
 * sounding and repeats well, what it would have gone on with is taken off first, so that an attack
 * shows under a sustained or overdriven sound.
 */
public final class OnsetLocator {
  static final double FRAME_SECONDS = 0.0007;
  static final double SPAN_SECONDS = 0.030;
  private static final double BEFORE_SECONDS = 0.013;
  private static final double AFTER_SECONDS = 0.005;

  /** Share of the attack's first peak at which it is taken to begin. */
  private static final float BEGIN_SHARE = 0.3f;

  private final int frame;
  private final int frames;
  private final int framesAfter;
  private final ChangePoint change;
  private final float[] sharp;
  private final double[] energy;

  public OnsetLocator(double sampleRateHz) {
    frame = Math.max(4, (int) (FRAME_SECONDS * sampleRateHz));
    frames = (int) (SPAN_SECONDS * sampleRateHz) / frame;
    int framesBefore = Math.max(6, (int) (BEFORE_SECONDS * sampleRateHz) / frame);
    framesAfter = Math.max(4, (int) (AFTER_SECONDS * sampleRateHz) / frame);
    change = new ChangePoint(framesBefore, framesAfter, 2);
    sharp = new float[frames * frame];
    energy = new double[frames];
  }

  /**
   * @param x sound
   * @param to the stretch ends before this index
   * @param periodFrames of the note that was sounding, 0 for none
   * @return the index of the attack
   */
  public int find(float[] x, int to, double periodFrames) {
    int count = frames * frame;
    int from = to - count;
    fill(x, from, periodFrames);
    for (int k = 0; k < frames; k++) {
      double sum = 1e-10;
      for (int i = k * frame; i < (k + 1) * frame; i++) {
        sum += sharp[i] * sharp[i];
      }
      energy[k] = sum;
    }
    int best = change.find(energy);
    int at = best * frame;
    float peak = 0;
    for (int i = at; i < Math.min(count, at + (framesAfter + 1) * frame); i++) {
      peak = Math.max(peak, Math.abs(sharp[i]));
    }
    for (int i = Math.max(0, at - frame / 2);
        i < Math.min(count, at + (framesAfter + 1) * frame);
        i++) {
      if (Math.abs(sharp[i]) >= BEGIN_SHARE * peak) {
        return from + i;
      }
    }
    return from + at;
  }

  /** Log-likelihood ratio of the last change point: large is certain. */
  public double score() {
    return change.score();
  }

  private void fill(float[] x, int from, double periodFrames) {
    int count = frames * frame;
    for (int i = 0; i < count; i++) {
      int k = from + i;
      sharp[i] = x[k] - 2 * x[k - 1] + x[k - 2];
    }
    if (periodFrames <= 0) {
      return;
    }
    int whole = (int) periodFrames;
    float part = (float) (periodFrames - whole);
    float c0 = -part * (1 - part) * (2 - part) / 6;
    float c1 = (1 + part) * (1 - part) * (2 - part) / 2;
    float c2 = (1 + part) * part * (2 - part) / 2;
    float c3 = -(1 + part) * part * (1 - part) / 6;
    // judged on the first third, before the attack
    double plain = 0;
    double combed = 0;
    for (int i = 0; i < count / 3; i++) {
      int k = from + i - whole;
      float old =
          c0 * second(x, k + 1) + c1 * second(x, k) + c2 * second(x, k - 1) + c3 * second(x, k - 2);
      plain += sharp[i] * sharp[i];
      combed += (sharp[i] - old) * (sharp[i] - old);
    }
    if (combed > 0.5 * plain) {
      return;
    }
    for (int i = 0; i < count; i++) {
      int k = from + i - whole;
      sharp[i] -=
          c0 * second(x, k + 1) + c1 * second(x, k) + c2 * second(x, k - 1) + c3 * second(x, k - 2);
    }
  }

  private static float second(float[] x, int k) {
    return x[k] - 2 * x[k - 1] + x[k - 2];
  }
}
