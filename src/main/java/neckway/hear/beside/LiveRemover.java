package neckway.hear.beside;

/**
 * Takes a known sound out of a take while it comes in. What is played is known before it is heard,
 * so what comes of it over the way is worked out a block ahead, and each sample can be given on as
 * soon as it has come; the way is learnt from when the block is whole.
 *
 * <p>Before the player begins, in the count-in, the way is learnt in several goes, as {@link
 * KnownSoundRemover} does with a whole take. Where the known sound is not heard then, as on
 * headphones, nothing is taken out.
 *
 * <p>The same sound gives the same for blocks of any size. See docs/decisions/beside.md.
 */
public final class LiveRemover {
  /** What is known to sound, on the take's own frames. */
  @FunctionalInterface
  public interface Known {
    /**
     * Gives it.
     *
     * @param frame of the take, before its beginning too
     * @param into filled from there on
     */
    void read(long frame, float[] into);
  }

  /** Takes what is left. */
  @FunctionalInterface
  public interface Sink {
    /** Takes samples in the order in which they came; they are valid until this returns. */
    void take(float[] samples, int offset, int length);
  }

  /**
   * Share of the way that is forgotten with each block: more than for a whole take, since clocks
   * that run apart are not known here. See docs/decisions/beside.md.
   */
  static final double FORGOTTEN = 0.003;

  /** Times that the way is learnt from the count-in. */
  static final int PASSES = 4;

  private final double rate;
  private final Known known;
  private final PathFilter filter;
  private final LiveRest rest;
  private final int block;
  private final int early;
  private final float[] beside;
  private final float[] heard;
  private final float[] leak;
  private final float[] given;
  private boolean takesOut = true;
  private long blockFrom;
  private int at;

  /**
   * @param rate of the take, Hz
   * @param known what is played; it is asked for up to {@link #aheadFrames} before it is heard
   */
  public LiveRemover(double rate, Known known) {
    this.rate = rate;
    this.known = known;
    block = blockFrames(rate);
    early = (int) (KnownSoundRemover.EARLY_SECONDS * rate);
    filter = new PathFilter(block, (int) Math.ceil(KnownSoundRemover.WAY_SECONDS * rate / block));
    rest = new LiveRest(rate);
    beside = new float[block];
    heard = new float[block];
    leak = new float[block];
    given = new float[block];
  }

  private static int blockFrames(double rate) {
    return Math.min(
        PathFilter.MOST_BLOCK_FRAMES,
        Integer.highestOneBit((int) (KnownSoundRemover.BLOCK_SECONDS * rate)));
  }

  /** How far ahead of the sound that comes the known sound is asked for, frames. */
  public static int aheadFrames(double rate) {
    return blockFrames(rate) + (int) (KnownSoundRemover.EARLY_SECONDS * rate);
  }

  /** By how much what is left comes later than what was heard, frames. */
  public int delayFrames() {
    return rest.delayFrames();
  }

  /**
   * Learns the way from the beginning of the take, in which nobody plays yet.
   *
   * @param take from its first frame
   * @param length how much of it there is
   * @param untilSeconds when the player begins; what is beyond the last whole block before that is
   *     left out
   */
  public void learn(float[] take, int length, double untilSeconds) {
    int frames = (int) Math.max(0, Math.min(length, untilSeconds * rate));
    int whole = frames / block * block;
    float[] all = new float[whole];
    for (int from = 0; from < whole; from += block) {
      known.read((long) from + early, beside);
      System.arraycopy(beside, 0, all, from, block);
    }
    double power = energy(take, whole) / Math.max(Float.MIN_NORMAL, energy(all, whole));
    if (whole == 0 || energy(all, whole) == 0) {
      return;
    }
    double without = surprise(take, all, 0);
    double doubt = KnownSoundRemover.MOST_DOUBT;
    double least = surprise(take, all, power * doubt);
    for (int i = 1; i < KnownSoundRemover.DOUBTS; i++) {
      double tried = surprise(take, all, power * KnownSoundRemover.MOST_DOUBT * Math.pow(0.1, i));
      if (tried > least) {
        break;
      }
      least = tried;
      doubt = KnownSoundRemover.MOST_DOUBT * Math.pow(0.1, i);
    }
    takesOut = without - least >= KnownSoundRemover.LEAST_TOLD * whole;
    filter.forget(FORGOTTEN);
    filter.forgetWay();
    for (int pass = 0; pass < PASSES && takesOut; pass++) {
      filter.rewind();
      filter.doubt(power * doubt * Math.pow(KnownSoundRemover.DOUBT_KEPT, pass), fall());
      through(take, all);
    }
    filter.rewind();
  }

  private double surprise(float[] take, float[] all, double doubt) {
    filter.forget(0);
    filter.forgetWay();
    filter.rewind();
    filter.doubt(doubt, fall());
    filter.surprise();
    through(take, all);
    return filter.surprise();
  }

  private void through(float[] take, float[] all) {
    for (int from = 0; from < all.length; from += block) {
      filter.process(take, all, from);
    }
  }

  private double fall() {
    return Math.pow(10, -6 * block / rate / KnownSoundRemover.FALL_SECONDS);
  }

  private static double energy(float[] x, int length) {
    double sum = 0;
    for (int i = 0; i < length; i++) {
      sum += x[i] * x[i];
    }
    return sum;
  }

  /** Whether the known sound was heard, so that it is taken out. */
  public boolean takesOut() {
    return takesOut;
  }

  /** Takes what has come and gives on what is left of it. */
  public void process(float[] take, int offset, int length, Sink out) {
    if (!takesOut) {
      out.take(take, offset, length);
      return;
    }
    int done = 0;
    while (done < length) {
      if (at == 0) {
        known.read(blockFrom + early, beside);
        filter.expect(beside, 0);
        filter.leak(leak, 0);
      }
      int count = Math.min(length - done, block - at);
      System.arraycopy(take, offset + done, heard, at, count);
      rest.process(heard, leak, at, count, out);
      at += count;
      done += count;
      if (at == block) {
        filter.learn(heard, 0);
        blockFrom += block;
        at = 0;
      }
    }
  }

  /** Gives on the last of it. */
  public void finish(Sink out) {
    if (takesOut) {
      rest.finish(out);
    }
  }
}
