package neckway.hear.beside;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * Finds by likeness where a known sound lies in a take, and how far the two clocks run apart.
 *
 * <p>Stretches of the take are held against the whole of the known sound by cross-correlation of
 * their phases (Knapp and Carter, "The generalized correlation method for estimation of time
 * delay", IEEE Trans. ASSP 24, 1976): so a guitar that is loud at some frequencies hides nothing at
 * the others. First the starts are looked for on which most stretches agree within some
 * milliseconds; music that repeats has several. Then, about each of them, the start and the slope
 * along which the correlations add up best: the slope is the drift.
 */
public final class AlignmentFinder {
  /** Rate at which sound is compared, Hz: most of what a small loudspeaker plays is under half. */
  static final double RATE_HZ = 12_000;

  /**
   * Clocks of sound devices run apart by less than this, as a share; common practice, no source.
   */
  static final double MOST_DRIFT = 3e-4;

  /**
   * The mean of the stretches' likenesses, in standard deviations, times the root of their number.
   * Measured on development takes: 14 and more where the backing was 30 dB under the guitar. One
   * that is not there may come over it too, so {@link KnownSoundRemover} asks once more.
   */
  static final double LEAST_SCORE = 9;

  /** Share of the best one's score that another alignment must have. */
  private static final double LEAST_SHARE = 0.4;

  /** Most alignments that are given. */
  private static final int MOST_ALIGNMENTS = 4;

  /** Frames of a stretch of the take. */
  private static final int STRETCH = 1 << 15;

  /** Most stretches compared, spread evenly, which keeps the time in bounds. */
  private static final int MOST_STRETCHES = 24;

  /** Stretches whose starts lie this near to each other may agree, drift included, seconds. */
  private static final double AGREE_SECONDS = 0.01;

  /** A start that was given is looked for this near to it, seconds. */
  private static final double NEAR_SECONDS = 0.5;

  /** Starts that are looked at closely. */
  private static final int CANDIDATES = 8;

  /** One stretch counts for no more than this when starts are chosen, variances. */
  private static final double MOST_LIKE = 2_500;

  /** Steps in which the drift is tried: first, and at last. */
  private static final double DRIFT_STEP = 4e-6;

  private static final double FINE_DRIFT_STEP = 2.5e-7;

  /** Steps a frame in which the start is tried. */
  private static final int FINE = 8;

  private final float[] take;
  private final float[] known;
  private final OptionalDouble near;
  private final Spectrum spectrum = new Spectrum(2 * STRETCH);
  private final List<Stretch> stretches = new ArrayList<>();
  private final int bin = (int) (AGREE_SECONDS * RATE_HZ);
  private double score;

  /**
   * @param near where the known sound is said to start, seconds in the take; empty: anywhere
   */
  public AlignmentFinder(
      float[] take, double takeRate, float[] known, double knownRate, OptionalDouble near) {
    this.take = atComparedRate(take, takeRate);
    this.known = atComparedRate(known, knownRate);
    this.near = near;
  }

  static float[] atComparedRate(float[] sound, double rate) {
    return AtRate.read(sound, 0, rate / RATE_HZ, (int) (sound.length * RATE_HZ / rate));
  }

  /** A stretch of the take, from a frame on. */
  private static final class Stretch {
    final int from;
    final float[] re;
    final float[] im;

    /** The greatest likeness in each bin of starts; the first bin's is -known.length. */
    final float[] tops;

    double squares;
    long count;

    Stretch(int from, float[] re, float[] im, int bins) {
      this.from = from;
      this.re = re;
      this.im = im;
      tops = new float[bins];
    }

    double scale() {
      return 1 / Math.sqrt(squares / Math.max(1, count) + Double.MIN_NORMAL);
    }
  }

  /** How a start and a drift fit. */
  private record Fit(double startFrame, double drift, double score) {}

  /**
   * The alignments that are like enough, the likeliest first; none where the known sound is not
   * found in the take.
   */
  public List<Alignment> find() {
    cutStretches();
    if (stretches.isEmpty()) {
      return List.of();
    }
    compare();
    List<Fit> fits =
        candidates().stream()
            .map(this::look)
            .sorted(Comparator.comparingDouble(fit -> -fit.score()))
            .toList();
    score = fits.isEmpty() ? 0 : fits.get(0).score();
    return fits.stream()
        .filter(fit -> fit.score() >= Math.max(LEAST_SCORE, LEAST_SHARE * score))
        .limit(MOST_ALIGNMENTS)
        .map(this::alignment)
        .toList();
  }

  /** How well the best alignment fitted, found or not. */
  double score() {
    return score;
  }

  private Alignment alignment(Fit fit) {
    // the start was found as at the stretches' middle; frame f is like (f - start) (1 + drift)
    double middle = middle();
    return new Alignment(
        (middle - (middle - fit.startFrame()) / (1 + fit.drift())) / RATE_HZ, fit.drift());
  }

  private double middle() {
    return STRETCH / 2.0 + stretches.stream().mapToInt(s -> s.from).average().orElseThrow();
  }

  private void cutStretches() {
    int bins = (take.length + known.length) / bin + 1;
    int all = (take.length + STRETCH - 1) / STRETCH;
    int count = Math.min(MOST_STRETCHES, all);
    for (int i = 0; i < count; i++) {
      int from = (int) ((long) i * all / count) * STRETCH;
      float[] re = cut(take, from, STRETCH);
      float[] im = new float[2 * STRETCH];
      if (!isSilent(re)) {
        spectrum.forward(re, im);
        whiten(re, im);
        stretches.add(new Stretch(from, re, im, bins));
      }
    }
  }

  /** So many samples, silent where there are none, and silence to twice a stretch. */
  private static float[] cut(float[] x, int from, int count) {
    float[] cut = new float[2 * STRETCH];
    for (int i = Math.max(0, -from); i < count && from + i < x.length; i++) {
      cut[i] = x[from + i];
    }
    return cut;
  }

  private static boolean isSilent(float[] x) {
    for (float v : x) {
      if (v != 0) {
        return false;
      }
    }
    return true;
  }

  private static void whiten(float[] re, float[] im) {
    double mean = 0;
    for (int k = 0; k < re.length; k++) {
      mean += re[k] * re[k] + im[k] * im[k];
    }
    mean /= re.length;
    for (int k = 0; k < re.length; k++) {
      double power = re[k] * re[k] + im[k] * im[k];
      float scale = (float) (1 / Math.sqrt(power + 1e-6 * mean + 1e-20));
      re[k] *= scale;
      im[k] *= scale;
    }
  }

  /** The likeness of each stretch to each place of the known sound, kept by bins of starts. */
  private void compare() {
    for (int knownFrom = -STRETCH; knownFrom < known.length; knownFrom += STRETCH) {
      float[] re = cut(known, knownFrom, 2 * STRETCH);
      if (isSilent(re)) {
        continue;
      }
      float[] im = new float[2 * STRETCH];
      spectrum.forward(re, im);
      whiten(re, im);
      for (Stretch s : stretches) {
        float[] likeness = correlate(s, re, im);
        for (int d = 0; d < STRETCH; d++) {
          keep(s, s.from - knownFrom - d, likeness[d]);
        }
      }
    }
  }

  private float[] correlate(Stretch s, float[] re, float[] im) {
    float[] r = new float[2 * STRETCH];
    float[] m = new float[2 * STRETCH];
    for (int k = 0; k < r.length; k++) {
      r[k] = s.re[k] * re[k] + s.im[k] * im[k];
      m[k] = s.re[k] * im[k] - s.im[k] * re[k];
    }
    spectrum.backward(r, m);
    return r;
  }

  private void keep(Stretch s, int startFrame, float likeness) {
    if (startFrame <= -known.length || startFrame >= take.length || !isAsked(startFrame)) {
      return;
    }
    int at = (startFrame + known.length) / bin;
    s.tops[at] = Math.max(s.tops[at], Math.abs(likeness));
    s.squares += likeness * likeness;
    s.count++;
  }

  private boolean isAsked(int startFrame) {
    return near.isEmpty() || Math.abs(startFrame / RATE_HZ - near.getAsDouble()) < NEAR_SECONDS;
  }

  /** The starts on which most stretches agree: frames, the best ones first. */
  private List<Integer> candidates() {
    int bins = stretches.get(0).tops.length;
    double[] sum = new double[bins];
    for (Stretch s : stretches) {
      double scale = s.scale();
      for (int b = 0; b + 1 < bins; b++) {
        double top = scale * Math.max(s.tops[b], s.tops[b + 1]);
        sum[b] += Math.min(top * top, MOST_LIKE);
      }
    }
    List<Integer> chosen = new ArrayList<>();
    int[] best =
        IntStream.range(0, bins)
            .boxed()
            .sorted(Comparator.comparingDouble(b -> -sum[b]))
            .limit(3L * CANDIDATES)
            .mapToInt(Integer::intValue)
            .toArray();
    for (int b : best) {
      if (chosen.size() < CANDIDATES && chosen.stream().noneMatch(c -> Math.abs(c - b) < 2)) {
        chosen.add(b);
      }
    }
    return chosen.stream().map(b -> (b + 1) * bin - known.length).toList();
  }

  /** The start near a frame, and the drift, at which the likenesses add up best. */
  private Fit look(int about) {
    int reach = 2 * bin;
    int width = 2 * reach * FINE;
    float[][] near = new float[stretches.size()][];
    for (int i = 0; i < near.length; i++) {
      Stretch s = stretches.get(i);
      int knownFrom = s.from - about - STRETCH / 2;
      float[] re = cut(known, knownFrom, 2 * STRETCH);
      float[] im = new float[2 * STRETCH];
      spectrum.forward(re, im);
      whiten(re, im);
      float[] likeness = correlate(s, re, im);
      // d rises as the start falls, so it is read backwards from the highest start
      near[i] = AtRate.read(reversed(likeness, reach), 0, 1.0 / FINE, width);
      for (int j = 0; j < width; j++) {
        near[i][j] *= (float) s.scale();
      }
    }
    boolean driftTells = stretches.size() >= 3;
    Fit coarse = best(near, about - reach, 0, driftTells ? MOST_DRIFT : 0, DRIFT_STEP);
    return driftTells
        ? best(near, about - reach, coarse.drift(), 2 * DRIFT_STEP, FINE_DRIFT_STEP)
        : coarse;
  }

  /** Likenesses of the starts from {@code reach} before the middle one to {@code reach} after. */
  private static float[] reversed(float[] likeness, int reach) {
    float[] x = new float[2 * reach];
    for (int i = 0; i < x.length; i++) {
      x[i] = likeness[STRETCH / 2 + reach - i];
    }
    return x;
  }

  private Fit best(float[][] near, int first, double drift, double driftReach, double driftStep) {
    double middle = middle() - STRETCH / 2.0;
    Fit best = new Fit(0, 0, -1);
    int steps = (int) Math.round(driftReach / driftStep);
    float[] sum = new float[near[0].length];
    for (int step = -steps; step <= steps; step++) {
      double d = drift + step * driftStep;
      Arrays.fill(sum, 0);
      for (int i = 0; i < near.length; i++) {
        int shift = (int) Math.rint(-d * (stretches.get(i).from - middle) * FINE);
        add(sum, near[i], shift);
      }
      for (int j = 0; j < sum.length; j++) {
        double fits = Math.abs(sum[j]) / Math.sqrt(near.length);
        if (fits > best.score()) {
          best = new Fit(first + j / (double) FINE, d, fits);
        }
      }
    }
    return best;
  }

  private static void add(float[] sum, float[] x, int shift) {
    for (int j = Math.max(0, -shift); j < sum.length && j + shift < x.length; j++) {
      sum[j] += x[j + shift];
    }
  }
}
