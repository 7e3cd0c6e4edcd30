package neckway.hear;

import neckway.hear.signal.Decimator;

/**
 * The pitch of one steady tone, to a fraction of a cent, for tuning.
 *
 * <p>First the period, by the normalised square difference of McLeod and Wyvill, "A smarter way to
 * find pitch" (ICMC 2005), equation 9, with their peak picking. Then, finer than any lag can tell,
 * the frequency of each of the lowest partials by the turn of its phase between two windows {@value
 * #APART_SECONDS} s apart (Flanagan and Golden, "Phase vocoder", 1966). A string's partials are
 * stretched, f_k = k f_0 sqrt(1 + B k^2), so a line is laid through (f_k / k)^2 over k^2, weighted
 * by strength; the pitch given is that line at k = 1, which a weak first partial does not spoil.
 *
 * <p>Range 29 to 1,400 Hz, B0 to E6 and a little more. An estimate is of the newest {@value
 * #SPAN_SECONDS} s and is renewed every {@value #HOP_SECONDS} s. Allocates nothing once made.
 */
public final class Tuner {
  /** Sound that one estimate is of, seconds. */
  static final double SPAN_SECONDS = 0.3;

  static final double HOP_SECONDS = 0.05;
  static final double APART_SECONDS = 0.1;

  /** Lowest and highest pitch, Hz. */
  static final double LOWEST_HZ = 29;

  static final double HIGHEST_HZ = 1_400;

  /** Likeness of one period to the next below which there is no steady tone; 1 is the same. */
  static final double LEAST_CLARITY = 0.85;

  /** Power under which there is nothing to tune, as a share of full scale: -66 dB. */
  static final double LEAST_POWER = 2.5e-7;

  private static final double WORKING_HZ = 11_000;
  private static final double FIRST_PEAK = 0.9;
  private static final double PERIOD_WINDOW_SECONDS = 0.07;
  private static final int PARTIALS = 8;
  private static final double LEAST_SHARE = 0.05;
  private static final double LEAST_BETWEEN = 0.02;
  private static final double LEAST_ODD = 0.01;
  private static final double MOST_STRAY = 0.02;
  private static final double MOST_STIFFNESS = 1e-3;

  private final Decimator decimator;
  private final double rateHz;
  private final float[] slow = new float[1 << 9];
  private final float[] ring;
  private final float[] span;
  private final double[] window;
  private final double[] likeness;
  private final int shortestLag;
  private final int periodWindow;
  private final int apart;
  private final int hop;
  private final double[] partialHz = new double[PARTIALS + 1];
  private final double[] strength = new double[PARTIALS + 1];
  private int at;
  private long count;
  private double pitchHz;
  private boolean steady;
  private double turnRe;
  private double turnIm;

  /**
   * @param sampleRateHz 8,000 to 192,000
   * @throws IllegalArgumentException for any other rate
   */
  public Tuner(double sampleRateHz) {
    if (!(sampleRateHz >= 8_000 && sampleRateHz <= 192_000)) {
      throw new IllegalArgumentException("sample rate " + sampleRateHz + " Hz");
    }
    int factor = Math.max(1, (int) (sampleRateHz / WORKING_HZ));
    decimator = new Decimator(factor);
    rateHz = sampleRateHz / factor;
    ring = new float[(int) (SPAN_SECONDS * rateHz)];
    span = new float[ring.length];
    apart = (int) (APART_SECONDS * rateHz);
    hop = (int) (HOP_SECONDS * rateHz);
    window = new double[ring.length - apart];
    for (int i = 0; i < window.length; i++) {
      window[i] = 0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / window.length);
    }
    shortestLag = (int) (rateHz / HIGHEST_HZ) - 1;
    likeness = new double[(int) (rateHz / LOWEST_HZ) + 3];
    periodWindow = (int) (PERIOD_WINDOW_SECONDS * rateHz) + likeness.length;
  }

  /**
   * Takes samples from -1 to 1.
   *
   * @return whether there is a new estimate
   */
  public boolean process(float[] samples, int offset, int length) {
    boolean renewed = false;
    for (int i = offset; i < offset + length; i += slow.length) {
      int made = decimator.process(samples, i, Math.min(offset + length, i + slow.length), slow, 0);
      for (int k = 0; k < made; k++) {
        ring[at] = slow[k];
        at = at + 1 == ring.length ? 0 : at + 1;
        count++;
        if (count >= ring.length && count % hop == 0) {
          read();
          renewed = true;
        }
      }
    }
    return renewed;
  }

  /** Whether the newest estimate is of a steady tone in range. */
  public boolean steady() {
    return steady;
  }

  /**
   * The newest estimate, Hz.
   *
   * @throws IllegalStateException if there is no steady tone
   */
  public double pitchHz() {
    if (!steady) {
      throw new IllegalStateException("no steady tone");
    }
    return pitchHz;
  }

  private void read() {
    System.arraycopy(ring, at, span, 0, ring.length - at);
    System.arraycopy(ring, 0, span, ring.length - at, at);
    double coarseHz = coarse();
    steady = coarseHz > 0 && fine(coarseHz);
  }

  /** The period by its likeness; 0 where there is none. */
  private double coarse() {
    int from = span.length - periodWindow;
    int inner = periodWindow - likeness.length;
    double power = 0;
    for (int i = from; i < span.length; i++) {
      power += span[i] * span[i];
    }
    if (power / periodWindow < LEAST_POWER) {
      return 0;
    }
    double best = 0;
    for (int lag = 0; lag < likeness.length; lag++) {
      double product = 0;
      double energy = 1e-12;
      for (int i = from; i < from + inner; i++) {
        double a = span[i];
        double b = span[i + lag];
        product += a * b;
        energy += a * a + b * b;
      }
      likeness[lag] = 2 * product / energy;
      if (peak(lag - 1)) {
        best = Math.max(best, top(lag - 1));
      }
    }
    for (int lag = shortestLag; lag < likeness.length - 1; lag++) {
      if (peak(lag) && top(lag) >= FIRST_PEAK * best && top(lag) >= LEAST_CLARITY) {
        return rateHz / (lag + shift(lag));
      }
    }
    return 0;
  }

  private double shift(int lag) {
    double curve = likeness[lag - 1] - 2 * likeness[lag] + likeness[lag + 1];
    return curve == 0 ? 0 : 0.5 * (likeness[lag - 1] - likeness[lag + 1]) / curve;
  }

  /** The height of a peak between the lags. */
  private double top(int lag) {
    return likeness[lag] - 0.25 * (likeness[lag - 1] - likeness[lag + 1]) * shift(lag);
  }

  private boolean peak(int lag) {
    return lag >= shortestLag
        && lag + 1 < likeness.length
        && likeness[lag] > likeness[lag - 1]
        && likeness[lag] >= likeness[lag + 1];
  }

  /**
   * Sets right a period that is off by a whole number: between the partials of a tone an octave or
   * a twelfth too high others stand, two at least; a tone an octave too low has even ones only.
   */
  private double octave(double coarseHz) {
    double guess = coarseHz;
    for (int part = 2; part <= 3; part++) {
      double strongest = 0;
      for (int k = 1; k <= 4; k++) {
        strongest = Math.max(strongest, strengthNear(k * guess));
      }
      int between = 0;
      for (int k = 1; k <= 3 * part; k++) {
        boolean stands = k % part != 0 && guess / part >= LOWEST_HZ;
        between += stands && strengthNear(k * guess / part) > LEAST_BETWEEN * strongest ? 1 : 0;
      }
      if (between >= 2) {
        return guess / part;
      }
    }
    double odd = 0;
    double even = 0;
    for (int k = 1; k <= PARTIALS; k++) {
      double here = strengthNear(k * guess);
      odd = k % 2 == 1 ? Math.max(odd, here) : odd;
      even = k % 2 == 0 ? Math.max(even, here) : even;
    }
    return odd < LEAST_ODD * even && 2 * guess <= HIGHEST_HZ ? 2 * guess : guess;
  }

  /** The strength of a partial, if one stands within a hundredth of a frequency; else 0. */
  private double strengthNear(double hz) {
    if (hz > 0.4 * rateHz) {
      return 0;
    }
    double found = partial(hz, apart / 4);
    return Math.abs(found - hz) < 0.01 * hz ? Math.hypot(turnRe, turnIm) : 0;
  }

  private boolean fine(double coarseHz) {
    double guess = octave(coarseHz);
    double strongest = 0;
    for (int k = 1; k <= PARTIALS; k++) {
      strength[k] = 0;
      double near = k * guess;
      if (near > 0.4 * rateHz) {
        continue;
      }
      double hz = partial(near, Math.min(apart, (int) (0.35 * rateHz / guess)));
      hz = partial(partial(hz, apart / 4), apart);
      if (Math.abs(hz - near) < MOST_STRAY * near) {
        partialHz[k] = hz;
        strength[k] = Math.hypot(turnRe, turnIm);
        strongest = Math.max(strongest, strength[k]);
      }
    }
    return strongest > 0 && line(strongest);
  }

  /** The frequency near one, by the turn of its phase from window to window this far apart. */
  private double partial(double hz, int frames) {
    double step = 2 * Math.PI * hz / rateHz;
    double firstRe = 0;
    double firstIm = 0;
    double secondRe = 0;
    double secondIm = 0;
    double stepRe = Math.cos(step);
    double stepIm = -Math.sin(step);
    double re = 1;
    double im = 0;
    int from = span.length - window.length - frames;
    for (int i = 0; i < window.length; i++) {
      double early = window[i] * span[from + i];
      double late = window[i] * span[from + frames + i];
      firstRe += early * re;
      firstIm += early * im;
      secondRe += late * re;
      secondIm += late * im;
      double turned = re * stepRe - im * stepIm;
      im = re * stepIm + im * stepRe;
      re = turned;
    }
    turnRe = firstRe;
    turnIm = firstIm;
    double turn =
        Math.atan2(
            secondIm * firstRe - secondRe * firstIm, secondRe * firstRe + secondIm * firstIm);
    double off = turn - step * frames;
    off -= 2 * Math.PI * Math.rint(off / (2 * Math.PI));
    return hz + off / (2 * Math.PI * frames) * rateHz;
  }

  /** A line through (f_k / k)^2 over k^2, read at k = 1. */
  private boolean line(double strongest) {
    double w = 0;
    double wx = 0;
    double wy = 0;
    double wxx = 0;
    double wxy = 0;
    int used = 0;
    for (int k = 1; k <= PARTIALS; k++) {
      if (strength[k] < LEAST_SHARE * strongest) {
        continue;
      }
      double weight = strength[k] * strength[k] * k * k;
      double x = (double) k * k;
      double y = partialHz[k] / k * (partialHz[k] / k);
      w += weight;
      wx += weight * x;
      wy += weight * y;
      wxx += weight * x * x;
      wxy += weight * x * y;
      used++;
    }
    double spread = w * wxx - wx * wx;
    double slope = used >= 3 && spread > 0 ? (w * wxy - wx * wy) / spread : 0;
    slope = Math.max(0, Math.min(slope, MOST_STIFFNESS * wy / w));
    double square = (wy - slope * wx) / w + slope;
    pitchHz = Math.sqrt(square);
    return square > 0 && pitchHz >= LOWEST_HZ && pitchHz <= HIGHEST_HZ;
  }
}
