package neckway.hear.signal;

/**
 * Brings sound to the rates and bands that the ear works in: about 22 kHz with the rumble below the
 * lowest note taken off, and half of that with the brightness taken off, for pitch. A metronome's
 * click is taken out where it is known.
 */
public final class FrontEnd {
  private static final int SIZE = 1 << 15;

  /** Frames of the past that stay within reach. */
  static final int KEEP = 1 << 13;

  private static final double LEAST_RATE_HZ = 20_000;
  private static final double RUMBLE_HZ = 60;
  private static final double BRIGHTNESS_HZ = 1_500;

  public final float[] x = new float[SIZE];
  public final float[] y = new float[SIZE / 2];
  public final double rateHz;
  public final int hop;
  public final ClickRemover clicks;

  private final int factor;
  private final double inputRateHz;
  private final float[] incoming;
  private final Decimator decimator;
  private final Biquad rumble;
  private final HumRemover hum;
  private final Biquad brightness;
  private int filled = KEEP;
  private long firstFrame = -KEEP;
  private int waiting;
  private long settled;
  private long given;

  public FrontEnd(double inputRateHz, double hopSeconds) {
    this.inputRateHz = inputRateHz;
    factor = Math.max(1, (int) (inputRateHz / LEAST_RATE_HZ));
    decimator = new Decimator(factor);
    rateHz = inputRateHz / factor;
    hop = Math.max(2, (int) Math.round(hopSeconds * rateHz) & ~1);
    incoming = new float[hop * factor];
    rumble = Biquad.highPass(RUMBLE_HZ, rateHz);
    hum = new HumRemover(rateHz);
    brightness = Biquad.lowPass(BRIGHTNESS_HZ, rateHz);
    clicks = new ClickRemover(rateHz);
  }

  /**
   * Takes samples up to the end of a hop; see {@link #ready()}.
   *
   * @return how many were taken, at most {@code length}
   */
  public int accept(float[] samples, int from, int length) {
    int taken = Math.min(length, incoming.length - waiting);
    System.arraycopy(samples, from, incoming, waiting, taken);
    waiting += taken;
    return taken;
  }

  /** Whether another hop has come in; then it is worked in and may be ready. */
  public boolean ready() {
    if (waiting < incoming.length) {
      return false;
    }
    waiting = 0;
    workIn();
    return true;
  }

  private void workIn() {
    if (filled + hop > SIZE) {
      int gone = filled - KEEP & ~1;
      System.arraycopy(x, gone, x, 0, filled - gone);
      System.arraycopy(y, gone / 2, y, 0, (filled - gone) / 2);
      firstFrame += gone;
      filled -= gone;
    }
    decimator.process(incoming, 0, incoming.length, x, filled);
    for (int i = filled; i < filled + hop; i++) {
      x[i] = (float) rumble.next(x[i]);
    }
    hum.process(x, filled, filled + hop);
    filled += hop;
    clicks.process(x, filled - hop, filled, firstFrame);
    settled = clicks.settledTo(firstFrame + filled);
  }

  /** Moves on by one hop if the sound is there and settled. */
  public boolean advance() {
    if (given + hop > settled) {
      return false;
    }
    given += hop;
    int to = index(given);
    for (int k = (to - hop) / 2; k < to / 2; k++) {
      brightness.next(x[2 * k]);
      y[k] = (float) brightness.next(x[2 * k + 1]);
    }
    return true;
  }

  /** The frame, from the start of the take, that the ear has come to. */
  public long end() {
    return given;
  }

  /** Whether mains hum is being taken off. */
  boolean humming() {
    return hum.active();
  }

  /** Index in {@link #x} of a frame; half of it is the index in {@link #y}. */
  public int index(long frame) {
    return (int) (frame - firstFrame);
  }

  /** Seconds from the first sample of the take. */
  public double seconds(double frame) {
    return (frame * factor - decimator.delayFrames()) / inputRateHz;
  }
}
