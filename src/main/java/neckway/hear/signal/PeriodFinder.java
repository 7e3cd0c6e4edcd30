package neckway.hear.signal;

/**
 * The period of a short stretch of sound by the normalised difference function: m(lag) = 2 r(lag) /
 * (e1 + e2) over the samples that the stretch and its shifted copy share (McLeod and Wyvill, "A
 * smarter way to find pitch", ICMC 2005, eq. 9, there called the normalised square difference
 * function). It departs from the paper in working on a stretch of any length, as little as one and
 * a half periods, so that a note can be named soon after its attack, and in taking the first peak
 * within a share of the best.
 */
public final class PeriodFinder {
  /** The first peak at least this share of the highest is the period. */
  static final double PEAK_SHARE = 0.9;

  /** A lag is looked into for whole parts down to this one. */
  private static final int MOST_PARTS = 6;

  /** A part's likeness, as a share of the whole lag's, for it to be thought of. */
  private static final double LEAST_PART = 0.6;

  /** A part's likeness in the differenced sound, as a share of the whole lag's. */
  private static final double BRIGHT_SHARE = 0.85;

  /** Lags that are looked at in one go where the first peaks may be enough. */
  private static final int BLOCK = 64;

  /** A likeness is at most 1, but for rounding. */
  private static final double MOST_LIKENESS = 1.001;

  /** Longest lag that is looked at, as a share of the stretch. */
  private static final double MOST_OF_STRETCH = 0.68;

  /** A period stays its own within this share, a little under half a semitone. */
  private static final double OWN_SHARE = 0.025;

  /** Next to a peak the likeness is less by this, at most, where the peak may be high enough. */
  private static final double NEAR_PEAK = 0.15;

  /** A part less like than this, as a share of the whole lag's clarity, is no period. */
  private static final double NO_PART = 0.6;

  /**
   * A sound that repeats with any whole part of a period, up to the sixth, does with one of these.
   */
  private static final int[] PRIME_PARTS = {2, 3, 5};

  /** Periods of smoothed sound that settle a low note. */
  private static final double LEAST_PERIODS = 2.3;

  private final double sampleRateHz;
  private final int longestLag;
  private final Autocorrelation products = new Autocorrelation();
  private final float[] product;
  private final float[] likeness;
  private final float[] smooth;
  private final float[] once;
  private int known;
  private double head;
  private double tail;
  private double periodFrames;
  private double clarity;

  public PeriodFinder(double sampleRateHz, double lowestHz) {
    this.sampleRateHz = sampleRateHz;
    longestLag = (int) Math.ceil(sampleRateHz / lowestHz) + 2;
    product = new float[longestLag + 2];
    likeness = new float[(int) (1.05 * longestLag) + 8];
    smooth = new float[(int) (0.06 * sampleRateHz)];
    once = new float[smooth.length + longestLag];
  }

  /**
   * Looks for a period in {@code x[from, to)}.
   *
   * @param shortestLag in frames, at least 2
   * @param longest in frames; what the stretch does not hold is left out
   * @return whether a peak was found; then {@link #periodFrames()} and {@link #clarity()} hold it
   */
  public boolean find(float[] x, int from, int to, int shortestLag, int longest) {
    return find(x, from, to, shortestLag, longest, Integer.MAX_VALUE);
  }

  /**
   * Finds the same period as {@link #find} with less work: no lag is looked at that cannot change
   * it. {@link #bestPart} and {@link #likenessAt} are of no use after it.
   */
  public boolean findPeriodOnly(float[] x, int from, int to, int shortestLag, int longest) {
    return find(x, from, to, shortestLag, longest, BLOCK);
  }

  /**
   * Whether the stretch plainly goes on repeating with a period that it had: its likeness has a
   * peak near, and none of the period's parts is much like it. A small share of the work of {@link
   * #findPeriodOnly}; where the answer is no, that one is to be asked. {@link #bestPart} and {@link
   * #likenessAt} are of no use after it.
   *
   * @param expected period in frames
   * @param least clarity
   * @return whether it does; then {@link #periodFrames()} and {@link #clarity()} hold what it came
   *     to
   */
  public boolean keeps(float[] x, int from, int to, double expected, double least) {
    int reach = (int) Math.max(1, OWN_SHARE * expected);
    int lag = (int) Math.rint(expected);
    if (lag - reach < 3 || lag + reach + 2 > Math.min(longestLag, (to - from) * MOST_OF_STRETCH)) {
      return false;
    }
    if (likenessOf(x, from, to, lag) < least - NEAR_PEAK) {
      return false;
    }
    int peak = climb(x, from, to, lag, reach);
    if (peak == 0) {
      return false;
    }
    refine(peak);
    return clarity >= least && !anyPart(x, from, to, peak);
  }

  /** The peak that is reached by going up from a lag, 0 where it is further than some frames. */
  private int climb(float[] x, int from, int to, int lag, int reach) {
    likeness[lag] = likenessOf(x, from, to, lag);
    likeness[lag - 1] = likenessOf(x, from, to, lag - 1);
    likeness[lag + 1] = likenessOf(x, from, to, lag + 1);
    int step = likeness[lag + 1] > likeness[lag - 1] ? 1 : -1;
    int peak = lag;
    while (!isPeak(peak)) {
      if (Math.abs(peak - lag) == reach) {
        return 0;
      }
      peak += step;
      likeness[peak + step] = likenessOf(x, from, to, peak + step);
    }
    return peak;
  }

  /** Whether a whole part of a lag may be the period: all of them have one of these in them. */
  private boolean anyPart(float[] x, int from, int to, int lag) {
    for (int parts : PRIME_PARTS) {
      int near = (int) Math.rint((double) lag / parts);
      if (likenessOf(x, from, to, near) >= NO_PART * clarity) {
        return true;
      }
    }
    return false;
  }

  /** Likeness at one lag. */
  private static float likenessOf(float[] x, int from, int to, int lag) {
    float dot0 = 0;
    float dot1 = 0;
    float dot2 = 0;
    float dot3 = 0;
    float all0 = 1e-12f;
    float all1 = 0;
    float all2 = 0;
    float all3 = 0;
    int end = to - lag;
    int i = from;
    for (; i + 3 < end; i += 4) {
      dot0 += x[i] * x[i + lag];
      dot1 += x[i + 1] * x[i + 1 + lag];
      dot2 += x[i + 2] * x[i + 2 + lag];
      dot3 += x[i + 3] * x[i + 3 + lag];
      all0 += x[i] * x[i] + x[i + lag] * x[i + lag];
      all1 += x[i + 1] * x[i + 1] + x[i + 1 + lag] * x[i + 1 + lag];
      all2 += x[i + 2] * x[i + 2] + x[i + 2 + lag] * x[i + 2 + lag];
      all3 += x[i + 3] * x[i + 3] + x[i + 3 + lag] * x[i + 3 + lag];
    }
    for (; i < end; i++) {
      dot0 += x[i] * x[i + lag];
      all0 += x[i] * x[i] + x[i + lag] * x[i + lag];
    }
    return 2 * (dot0 + dot1 + (dot2 + dot3)) / (all0 + all1 + (all2 + all3));
  }

  private boolean find(float[] x, int from, int to, int shortestLag, int longest, int block) {
    int length = to - from;
    int last = Math.min(Math.min(longest, longestLag), (int) (length * MOST_OF_STRETCH));
    if (last < shortestLag + 2) {
      return false;
    }
    begin(x, from, to);
    int upTo = 0;
    int lag = 0;
    while (upTo < last && lag == 0) {
      upTo = last - upTo > block ? upTo + block : last;
      correlate(x, from, to, upTo + 1);
      lag = firstPeak(shortestLag, upTo, upTo == last);
    }
    if (lag == 0) {
      return false;
    }
    int shorter = divided(x, from, to, lag, shortestLag);
    if (shorter > 0) {
      lag = shorter;
    } else if (2 * lag + 2 < last && bright(x, from, to, lag) < 0.55) {
      correlate(x, from, to, last + 1);
      int twice = peakNear(2 * lag, last);
      if (twice > 0
          && likeness[twice] > likeness[lag] - 0.02
          && bright(x, from, to, twice) > 0.85) {
        lag = twice;
      }
    }
    refine(lag);
    return true;
  }

  /**
   * The first peak within a share of the best.
   *
   * @param all whether there is no peak beyond {@code last}
   * @return its lag, 0 for none or where a peak yet to come may be so high that it is another
   */
  private int firstPeak(int shortestLag, int last, boolean all) {
    double best = 0;
    int first = firstPeak(shortestLag, last, 0);
    for (int lag = first; first > 0 && lag <= last; lag++) {
      if (isPeak(lag)) {
        best = Math.max(best, likeness[lag]);
      }
    }
    int lag = best > 0 ? firstPeak(shortestLag, last, PEAK_SHARE * best) : 0;
    return all || lag > 0 && likeness[lag] >= PEAK_SHARE * MOST_LIKENESS ? lag : 0;
  }

  private int firstPeak(int shortestLag, int last, double least) {
    boolean below = false;
    for (int lag = 1; lag <= last; lag++) {
      below |= likeness[lag] < 0.3;
      if (below && lag >= shortestLag && isPeak(lag) && likeness[lag] >= least) {
        return lag;
      }
    }
    return 0;
  }

  /**
   * A whole part of a lag that explains the brighter part of the sound as well: then what repeats
   * only after the longer lag is a thump of the body or another string's ringing.
   */
  private int divided(float[] x, int from, int to, int lag, int shortestLag) {
    double whole = bright(x, from, to, lag);
    for (int parts = MOST_PARTS; parts >= 2; parts--) {
      int near = (int) Math.rint((double) lag / parts);
      if (near < shortestLag) {
        continue;
      }
      int peak = peakNear(near, lag - 1);
      if (peak > 0
          && likeness[peak] >= LEAST_PART * likeness[lag]
          && bright(x, from, to, peak) >= BRIGHT_SHARE * whole) {
        return peak;
      }
    }
    return 0;
  }

  /**
   * The best whole part of a period of the last stretch that is none of some others.
   *
   * @return its lag, 0 for none
   */
  public int bestPart(double period, int shortestLag, double[] others) {
    int best = 0;
    for (int parts = 2; parts <= 9 && period / parts >= shortestLag; parts++) {
      double part = period / parts;
      boolean other = false;
      for (double o : others) {
        other |= o > 0 && Math.abs(part / o - 1) < 0.02;
      }
      int peak = other ? 0 : peakNear((int) Math.rint(part), longestLag);
      if (peak > 0 && (best == 0 || likeness[peak] > likeness[best])) {
        best = peak;
      }
    }
    return best;
  }

  /**
   * Settles the period of a low note on its first few partials: the higher ones of a stiff string
   * are sharp (Fletcher, "Normal vibration frequencies of a stiff piano string", 1964) and pull it
   * up. The sound is smoothed over a sixth of the period, twice.
   *
   * @return the period, or the one given where the smoothed sound does not repeat near it
   */
  public double onLowPartials(float[] x, int from, int to, double period) {
    int box = (int) Math.rint(period / 6);
    int first = from + 2 * box;
    int count = to - first;
    int reach = Math.max(2, (int) (0.04 * period));
    int middle = (int) Math.rint(period);
    if (box < 2 || count > smooth.length || count < LEAST_PERIODS * period) {
      return period;
    }
    smoothInto(x, first, count, box);
    int best = climb(smooth, 0, count, middle, reach);
    if (best == 0 || likeness[best] < 0.85) {
      return period;
    }
    double a = likeness[best - 1];
    double b = likeness[best];
    double c = likeness[best + 1];
    double bend = a - 2 * b + c;
    return bend < 0 ? best + 0.5 * (a - c) / bend : best;
  }

  /** Two running means of {@code box} frames, one after the other. */
  private void smoothInto(float[] x, int first, int count, int box) {
    double inner = 0;
    double outer = 0;
    for (int i = first - 2 * box; i < first + count; i++) {
      inner += x[i] - (i >= first - box ? x[i - box] : 0);
      if (i < first - box) {
        continue;
      }
      once[i - first + box] = (float) inner;
      outer += inner - (i >= first ? once[i - first] : 0);
      if (i >= first) {
        smooth[i - first] = (float) outer;
      }
    }
  }

  /** MIDI note number with its fraction, of a period in frames. */
  public double pitchOf(double period) {
    return 69 + 12 * Math.log(sampleRateHz / period / 440) / Math.log(2);
  }

  /** Makes this lag of the last stretch its period. */
  public void settleOn(int lag) {
    refine(lag);
  }

  /** The peak within 3 % of a lag, 0 for none. */
  private int peakNear(int lag, int last) {
    int reach = Math.max(1, (int) (0.03 * lag));
    int found = 0;
    for (int k = Math.max(2, lag - reach); k <= Math.min(last, lag + reach); k++) {
      if (isPeak(k) && (found == 0 || likeness[k] > likeness[found])) {
        found = k;
      }
    }
    return found;
  }

  /** Likeness at a lag of the differenced sound, in which low partials weigh less. */
  private static double bright(float[] x, int from, int to, int lag) {
    double dot = 0;
    double a = 1e-12;
    double b = 0;
    for (int i = from + 1; i + lag < to; i++) {
      float d = x[i] - x[i - 1];
      float e = x[i + lag] - x[i + lag - 1];
      dot += d * e;
      a += d * d;
      b += e * e;
    }
    return 2 * dot / (a + b);
  }

  /** Frames, with a fraction. */
  public double periodFrames() {
    return periodFrames;
  }

  /** MIDI note number with its fraction. */
  public double pitch() {
    return pitchOf(periodFrames);
  }

  /** From 0 (no period) to 1 (one that repeats exactly). */
  public double clarity() {
    return clarity;
  }

  /** Likeness of the last stretch at a lag, between whole frames by a straight line. */
  public double likenessAt(double lag) {
    int i = (int) lag;
    if (i < 1 || i > longestLag) {
      return 0;
    }
    double f = lag - i;
    return likeness[i] * (1 - f) + likeness[i + 1] * f;
  }

  private void begin(float[] x, int from, int to) {
    known = 0;
    products.begin(x, from, to);
    head = 0;
    for (int i = from; i < to; i++) {
      head += x[i] * x[i];
    }
    tail = head;
  }

  /** Works out the likeness of the lags up to one, from where it was left. */
  private void correlate(float[] x, int from, int to, int last) {
    int end = last + 1;
    if (end <= known) {
      return;
    }
    products.of(known, end, product);
    for (int lag = known; lag < end; lag++) {
      double norm = head + tail;
      likeness[lag] = norm > 1e-12 ? (float) (2 * product[lag] / norm) : 0;
      head -= x[to - 1 - lag] * x[to - 1 - lag];
      tail -= x[from + lag] * x[from + lag];
    }
    known = end;
  }

  private boolean isPeak(int lag) {
    return likeness[lag] > 0
        && likeness[lag] >= likeness[lag - 1]
        && likeness[lag] > likeness[lag + 1];
  }

  private void refine(int lag) {
    double a = likeness[lag - 1];
    double b = likeness[lag];
    double c = likeness[lag + 1];
    double bend = a - 2 * b + c;
    double shift = bend < 0 ? 0.5 * (a - c) / bend : 0;
    periodFrames = lag + shift;
    clarity = Math.min(1, b - 0.25 * (a - c) * shift);
  }
}
