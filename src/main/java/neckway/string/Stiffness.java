package neckway.string;

import java.util.Arrays;
import java.util.Optional;

/**
 * Reads from the sound of one plucked note how stiff its string is: B in f_k = k f0 sqrt(1 + B k^2)
 * (Fletcher 1964). B and pitch together tell the string (Barbancho et al. 2012; Hjerrild and
 * Christensen 2019).
 *
 * <p>Departing from those, no single B is picked: each peak of the spectrum is taken as one of
 * three things, and the likelihood of every B follows. It may be a partial of a string of that B;
 * an exact harmonic, as an overdriven amplifier makes them of the low partials and as the bridge
 * drives them on low wound strings; or a stray (another string, hum, noise). How common exact
 * harmonics are is left open between two cases, hardly any and most; what a take tells of that can
 * be given to the estimate. The fundamental is summed over.
 *
 * <p>Valid for f0 from 60 Hz to 1.5 kHz and B from 3e-6 to 4e-3. Not for several threads.
 */
public final class Stiffness {
  /** The least B that is looked at. */
  public static final double LOWEST = 3e-6;

  /** The greatest B that is looked at. */
  public static final double HIGHEST = 4e-3;

  /** From this long after the onset the sound is used: the pick's noise is gone. */
  public static final double SKIP_SECONDS = 0.004;

  /** No more sound than this is used. */
  public static final double LONGEST_SECONDS = 0.35;

  /** Shorter stretches of sound tell nothing. */
  public static final double SHORTEST_SECONDS = 0.05;

  private static final int GRID = 120;
  private static final int MOST_PARTIALS = 40;
  private static final int FEWEST_PEAKS = 3;

  /** The fundamental is sought this far up and down. */
  private static final int RANGE_CENTS = 30;

  private static final int SHIFTS = 2 * RANGE_CENTS + 1;

  /** How well the given fundamental is known. */
  private static final double PITCH_CENTS = 12;

  /** How far a partial lies from where the formula puts it, noise apart. */
  private static final double FORMULA_CENTS = 1;

  private static final double FORMULA_HZ = 0.3;

  /** How far an exact harmonic lies from where it should. */
  private static final double HARMONIC_CENTS = 2;

  private static final double STRAY_SHARE = 0.3;

  /** A stray may lie anywhere in this range about a partial. */
  private static final double STRAY_CENTS = 100;

  private static final double[] HARMONIC_SHARES = {0.06, 0.6};

  /**
   * What an overdriven amplifier makes of the partials is not independent from one to the next: so
   * much of the logarithm is kept.
   */
  private static final double DRIVEN_TRUST = 0.5;

  private static final double TINY = 1e-300;
  private static final double ROOT_TWO_PI = Math.sqrt(2 * Math.PI);
  private static final double CENTS_PER_NEPER = 1200 / Math.log(2);

  /** The bell curve over the square of its argument. */
  private static final double[] BELL = new double[1024];

  private static final double BELL_REACH = 18;
  private static final double BELL_STEPS = BELL.length / BELL_REACH;

  private static final double LOWEST_CENTS = -100;
  private static final double HIGHEST_CENTS = 8400;
  private static final double CELL_CENTS = 4;

  static {
    for (int i = 0; i < BELL.length; i++) {
      BELL[i] = Math.exp(-0.5 * (i + 0.5) / BELL_STEPS) - Math.exp(-0.5 * BELL_REACH);
    }
  }

  private final double sampleRateHz;
  private final SpectrumPeaks peaks;
  private final double[] lnStiffness = new double[GRID];

  /** Of each partial, from the first at 1, over the ideal string's fundamental, by ln B. */
  private final double[][] partialCents = new double[GRID][MOST_PARTIALS + 1];

  private final double[] peakCents = new double[SpectrumPeaks.MOST_PEAKS];
  private final double[] peakWeight = new double[SpectrumPeaks.MOST_PEAKS];
  private final int[] nearestPeak = new int[(int) ((HIGHEST_CENTS - LOWEST_CENTS) / CELL_CENTS)];
  private final double[][][] gain =
      new double[HARMONIC_SHARES.length][SpectrumPeaks.MOST_PEAKS][SHIFTS];
  private final double[][] apart = new double[HARMONIC_SHARES.length][SHIFTS];
  private final double[][] product = new double[HARMONIC_SHARES.length][SHIFTS];
  private int count;

  /**
   * @param sampleRateHz 8,000 to 192,000
   */
  public Stiffness(double sampleRateHz) {
    if (!(sampleRateHz >= 8_000 && sampleRateHz <= 192_000)) {
      throw new IllegalArgumentException("sample rate " + sampleRateHz + " Hz");
    }
    this.sampleRateHz = sampleRateHz;
    peaks = new SpectrumPeaks(sampleRateHz, LONGEST_SECONDS);
    for (int i = 0; i < GRID; i++) {
      lnStiffness[i] = Math.log(LOWEST) + i * Math.log(HIGHEST / LOWEST) / (GRID - 1);
    }
    for (int i = 0; i < GRID; i++) {
      double stiffness = Math.exp(lnStiffness[i]);
      for (int k = 1; k <= MOST_PARTIALS; k++) {
        partialCents[i][k] = CENTS_PER_NEPER * (Math.log(k) + 0.5 * Math.log1p(stiffness * k * k));
      }
    }
  }

  /**
   * Reads a note.
   *
   * @param samples mono
   * @param onsetFrame where the note begins
   * @param frames how much of it is sound of this note, at least {@link #SHORTEST_SECONDS}; what
   *     goes beyond {@link #LONGEST_SECONDS} or the end of the samples is left alone
   * @param f0Hz its fundamental, known to 30 cents
   * @return what is heard of the string; empty where the stretch is too short or has next to no
   *     partials
   */
  public Optional<StiffnessEstimate> read(
      float[] samples, int onsetFrame, int frames, double f0Hz) {
    if (onsetFrame < 0 || !(f0Hz > 0)) {
      throw new IllegalArgumentException("a note at frame " + onsetFrame + " of " + f0Hz + " Hz");
    }
    int skip = (int) Math.round(SKIP_SECONDS * sampleRateHz);
    int used = Math.min(frames, samples.length - onsetFrame) - skip;
    if (used < SHORTEST_SECONDS * sampleRateHz) {
      return Optional.empty();
    }
    peaks.find(samples, onsetFrame + skip, used, f0Hz);
    weigh(f0Hz);
    if (count < FEWEST_PEAKS) {
      return Optional.empty();
    }
    fillCells();
    weighShifts();
    double topCents =
        CENTS_PER_NEPER * Math.log(Math.min(SpectrumPeaks.HIGHEST_HZ, 0.45 * sampleRateHz) / f0Hz);
    double[][] curves = new double[HARMONIC_SHARES.length][GRID];
    for (int i = 0; i < GRID; i++) {
      fit(partialCents[i], topCents);
      sumOverPitch(i, curves);
    }
    double top = highest(curves[1]);
    for (int i = 0; i < GRID; i++) {
      curves[1][i] = top + DRIVEN_TRUST * (curves[1][i] - top);
    }
    return Optional.of(
        new StiffnessEstimate(lnStiffness, curves[0], curves[1], StiffnessEstimate.EVEN));
  }

  /** What each peak is worth where it is no partial of the string, and the more where it is. */
  private void weigh(double f0Hz) {
    count = 0;
    for (double[] a : apart) {
      Arrays.fill(a, 0);
    }
    for (int i = 0; i < peaks.count(); i++) {
      double cents = CENTS_PER_NEPER * Math.log(peaks.hz(i) / f0Hz);
      if (cents < LOWEST_CENTS) {
        continue;
      }
      double hz = Math.hypot(peaks.errorHz(i), FORMULA_HZ);
      double error = Math.hypot(CENTS_PER_NEPER * hz / peaks.hz(i), FORMULA_CENTS);
      double harmonicError = Math.hypot(error, HARMONIC_CENTS);
      peakCents[count] = cents;
      peakWeight[count] = BELL_STEPS / (error * error);
      int k = (int) Math.max(1, Math.rint(peaks.hz(i) / f0Hz));
      double over = cents - CENTS_PER_NEPER * Math.log(k);
      for (int h = 0; h < HARMONIC_SHARES.length; h++) {
        double partial = (1 - STRAY_SHARE - HARMONIC_SHARES[h]) * bellHeight(error);
        double harmonic = HARMONIC_SHARES[h] * bellHeight(harmonicError);
        Arrays.fill(gain[h][count], partial / STRAY_SHARE);
        for (int j = 0; j < SHIFTS; j++) {
          double d = (over - (j - RANGE_CENTS)) / harmonicError;
          double step = d * d * BELL_STEPS;
          if (step < BELL.length) {
            double more = 1 + harmonic * BELL[(int) step] / STRAY_SHARE;
            gain[h][count][j] /= more;
            apart[h][j] += Math.log(more);
          }
        }
      }
      count++;
    }
  }

  /** Height of a bell curve over that of the strays' even spread. */
  private static double bellHeight(double errorCents) {
    return STRAY_CENTS / (errorCents * ROOT_TWO_PI);
  }

  private void fillCells() {
    int peak = 0;
    for (int cell = 0; cell < nearestPeak.length; cell++) {
      double cents = LOWEST_CENTS + (cell + 0.5) * CELL_CENTS;
      while (peak + 1 < count
          && Math.abs(peakCents[peak + 1] - cents) < Math.abs(peakCents[peak] - cents)) {
        peak++;
      }
      nearestPeak[cell] = peak;
    }
  }

  /** How much likelier the peaks are for partials of this B, for every shift of the pitch. */
  private void fit(double[] cents, double topCents) {
    double[] few = product[0];
    double[] many = product[1];
    Arrays.fill(few, 1);
    Arrays.fill(many, 1);
    for (int k = 1; k <= MOST_PARTIALS; k++) {
      if (cents[k] > topCents) {
        return;
      }
      double start = cents[k] - RANGE_CENTS;
      int cell = (int) ((start - LOWEST_CENTS) / CELL_CENTS);
      if (cell >= nearestPeak.length) {
        return;
      }
      int from = 0;
      for (int peak = Math.max(0, nearestPeak[cell] - 1); peak < count && from < SHIFTS; peak++) {
        double middle = peakCents[peak] - start;
        double reach = Math.sqrt(BELL.length / peakWeight[peak]);
        from = Math.max(from, (int) Math.ceil(middle - reach));
        double end = middle + reach;
        if (peak + 1 < count) {
          end = Math.min(end, 0.5 * (peakCents[peak] + peakCents[peak + 1]) - start);
        }
        for (; from <= end && from < SHIFTS; from++) {
          double off = from - middle;
          int step = (int) (off * off * peakWeight[peak]);
          if (step < BELL.length) {
            few[from] *= 1 + BELL[step] * gain[0][peak][from];
            many[from] *= 1 + BELL[step] * gain[1][peak][from];
          }
        }
      }
    }
  }

  /** Makes weights of the peaks' other explanations and of what is known of the pitch. */
  private void weighShifts() {
    double most = Double.NEGATIVE_INFINITY;
    for (int j = 0; j < SHIFTS; j++) {
      double z = (j - RANGE_CENTS) / PITCH_CENTS;
      for (double[] a : apart) {
        a[j] -= 0.5 * z * z;
        most = Math.max(most, a[j]);
      }
    }
    for (double[] a : apart) {
      for (int j = 0; j < SHIFTS; j++) {
        a[j] = Math.exp(a[j] - most);
      }
    }
  }

  private void sumOverPitch(int grid, double[][] curves) {
    double few = TINY;
    double many = TINY;
    for (int j = 0; j < SHIFTS; j++) {
      few += product[0][j] * apart[0][j];
      many += product[1][j] * apart[1][j];
    }
    curves[0][grid] = Math.log(few);
    curves[1][grid] = Math.log(many);
  }

  private static double highest(double[] curve) {
    return Arrays.stream(curve).max().orElseThrow();
  }
}
