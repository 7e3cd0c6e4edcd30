package neckway.hear.beside;

import be.tarsos.dsp.util.fft.FFT;
import java.util.Arrays;

/**
 * Learns the way from a loudspeaker to the microphone, block by block, and tells what comes over it
 * of a sound that is known. Whatever else the microphone hears is noise to it.
 *
 * <p>A Kalman filter in the frequency domain: Enzner and Vary, "Frequency-domain adaptive Kalman
 * filter for acoustic echo control in hands-free telephones", Signal Processing 86 (2006); in
 * partitions as in Kuech, Mabande and Enzner, "State-space architecture of the partitioned-block-
 * based acoustic echo controller", ICASSP 2014. The uncertainty of each coefficient is kept apart
 * from that of the others. Departure: the noise is taken as loud as what is left now at each
 * frequency, or as half of what was left a block ago if that is more; so a note that is struck
 * hardly moves the filter, wherever it is louder than the leak.
 *
 * <p>A block is answered when it is whole; nothing else is late. Nothing is allocated while it
 * works.
 */
public final class PathFilter {
  /** A longer one would have the transform start threads of its own. */
  static final int MOST_BLOCK_FRAMES = 4096;

  /** Share of the noise of the block before that is still counted on. */
  private static final float NOISE_KEPT = 0.5f;

  /** No sound at a frequency, mean square of a spectrum's part. */
  private static final float NOTHING = 1e-12f;

  private final int block;
  private final int parts;
  private final FFT fft;
  private final float[][] known;
  private final float[][] way;
  private final float[][] doubt;
  private final float[] noise;
  private final float[] window;
  private final float[] estimate;
  private final float[] error;
  private final float[] step;
  private final float[] expected;
  private int newest;
  private float forgotten;
  private double surprise;

  /**
   * @param blockFrames frames of a block, a power of two of 32 to {@value #MOST_BLOCK_FRAMES}
   * @param parts length of the way in blocks, 1 or more
   */
  public PathFilter(int blockFrames, int parts) {
    if (blockFrames < 32
        || blockFrames > MOST_BLOCK_FRAMES
        || Integer.bitCount(blockFrames) != 1
        || parts < 1) {
      throw new IllegalArgumentException(blockFrames + " frames, " + parts + " parts");
    }
    block = blockFrames;
    this.parts = parts;
    fft = new FFT(2 * block);
    known = new float[parts][2 * block];
    way = new float[parts][2 * block];
    doubt = new float[parts][block];
    noise = new float[block];
    window = new float[2 * block];
    estimate = new float[2 * block];
    error = new float[2 * block];
    step = new float[2 * block];
    expected = new float[block];
  }

  /** Frames of a block. */
  public int blockFrames() {
    return block;
  }

  /**
   * Says how far the way learnt so far may be trusted.
   *
   * @param power how far the way may be off at each frequency: in its first part, squared
   * @param fallPerPart what becomes of that from each part to the next, more than 0 to 1
   */
  public void doubt(double power, double fallPerPart) {
    for (int p = 0; p < parts; p++) {
      Arrays.fill(doubt[p], (float) (power * Math.pow(fallPerPart, p)));
    }
  }

  /**
   * Says how soon the way may change.
   *
   * @param share of what is known of it that is forgotten with each block, 0 to 1
   */
  public void forget(double share) {
    forgotten = (float) share;
  }

  /** Forgets the way that was learnt. */
  void forgetWay() {
    for (float[] spectrum : way) {
      Arrays.fill(spectrum, 0);
    }
  }

  /** Forgets the sound, not the way: another take, or the same from its beginning. */
  public void rewind() {
    for (float[] spectrum : known) {
      Arrays.fill(spectrum, 0);
    }
    Arrays.fill(window, 0);
    Arrays.fill(noise, 0);
  }

  /**
   * Takes a block.
   *
   * @param take what the microphone heard, a block from {@code from} on
   * @param beside what was known to sound, the same
   */
  public void process(float[] take, float[] beside, int from) {
    expect(beside, from);
    learn(take, from);
  }

  /**
   * Works out what will come over the way in a block, before any of it was heard: for that it is
   * enough to know what is played.
   *
   * @param beside what is known to sound, a block from {@code from} on
   */
  void expect(float[] beside, int from) {
    System.arraycopy(window, block, window, 0, block);
    System.arraycopy(beside, from, window, block, block);
    newest = newest == 0 ? parts - 1 : newest - 1;
    float[] x = known[newest];
    System.arraycopy(window, 0, x, 0, 2 * block);
    forward(x);
    estimate();
  }

  /**
   * Learns from the block that was last expected.
   *
   * @param take what the microphone heard in it, from {@code from} on
   */
  void learn(float[] take, int from) {
    Arrays.fill(error, 0, block, 0);
    for (int i = 0; i < block; i++) {
      error[block + i] = take[from + i] - estimate[block + i];
    }
    forward(error);
    learn();
  }

  /**
   * What came over the way in the last block, as it was known before that block was learnt from.
   *
   * @param leak where it is put, from {@code from} on
   */
  public void leak(float[] leak, int from) {
    System.arraycopy(estimate, block, leak, from, block);
  }

  /**
   * The sum, since it was last asked, of the logarithms of what was left at each frequency in each
   * block before the block was learnt from. The way is known the better the less that is.
   */
  public double surprise() {
    double sum = surprise;
    surprise = 0;
    return sum;
  }

  private void forward(float[] spectrum) {
    fft.forwardTransform(spectrum);
    // the first two numbers are the mean and the highest frequency: there is no sound
    spectrum[0] = 0;
    spectrum[1] = 0;
  }

  private float[] knownAt(int part) {
    int at = newest + part;
    return known[at < parts ? at : at - parts];
  }

  private void estimate() {
    Arrays.fill(estimate, 0);
    for (int p = 0; p < parts; p++) {
      float[] x = knownAt(p);
      float[] w = way[p];
      for (int k = 2; k < 2 * block; k += 2) {
        estimate[k] += x[k] * w[k] - x[k + 1] * w[k + 1];
        estimate[k + 1] += x[k] * w[k + 1] + x[k + 1] * w[k];
      }
    }
    fft.backwardsTransform(estimate);
  }

  private void learn() {
    Arrays.fill(expected, 0);
    for (int p = 0; p < parts; p++) {
      float[] x = knownAt(p);
      float[] c = doubt[p];
      for (int k = 1; k < block; k++) {
        expected[k] += (x[2 * k] * x[2 * k] + x[2 * k + 1] * x[2 * k + 1]) * c[k];
      }
    }
    for (int k = 1; k < block; k++) {
      float now = error[2 * k] * error[2 * k] + error[2 * k + 1] * error[2 * k + 1];
      surprise += Math.log(now + NOTHING);
      noise[k] = Math.max(now, NOISE_KEPT * noise[k]);
      // half of the error's window is empty, so its spectrum has half the power
      expected[k] = 1 / (expected[k] + 2 * noise[k] + NOTHING);
    }
    for (int p = 0; p < parts; p++) {
      learn(p);
    }
  }

  private void learn(int part) {
    float[] x = knownAt(part);
    float[] c = doubt[part];
    float[] w = way[part];
    float keep = 1 - forgotten;
    step[0] = 0;
    step[1] = 0;
    for (int k = 1; k < block; k++) {
      float xr = x[2 * k];
      float xi = x[2 * k + 1];
      float gain = c[k] * expected[k];
      step[2 * k] = gain * (xr * error[2 * k] + xi * error[2 * k + 1]);
      step[2 * k + 1] = gain * (xr * error[2 * k + 1] - xi * error[2 * k]);
      c[k] *= 1 - 0.5f * gain * (xr * xr + xi * xi);
    }
    fft.backwardsTransform(step);
    Arrays.fill(step, block, 2 * block, 0);
    forward(step);
    for (int k = 2; k < 2 * block; k++) {
      w[k] += step[k];
    }
    if (forgotten > 0) {
      for (int k = 1; k < block; k++) {
        float own = w[2 * k] * w[2 * k] + w[2 * k + 1] * w[2 * k + 1];
        c[k] = keep * c[k] + forgotten * own;
      }
    }
  }
}
