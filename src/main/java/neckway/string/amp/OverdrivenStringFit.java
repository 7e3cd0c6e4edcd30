package neckway.string.amp;

import java.util.Arrays;
import neckway.hear.RobustStatistics;

/**
 * Fits a {@link OverdrivenString} to the harmonics of a note by damped least squares (Levenberg
 * 1944, Marquardt 1963), the strength of each harmonic left free and worked out with each step
 * (variable projection: Golub and Pereyra 1973, in Kaufman's form). Frames that do not fit count
 * less, as under Student's distribution: the pick, the note before and the finger that leaves are
 * no string.
 */
public final class OverdrivenStringFit {
  /** Mean square of the residual, over what is expected, from which a frame counts less. */
  private static final double ODD = 2;

  /** Error of the faintest harmonics as a share of the strongest's. */
  private static final double FLOOR = 0.02;

  /**
   * What is left over comes of what the model leaves out, goes on from frame to frame and is alike
   * in all harmonics: it is worth so many independent numbers, and never less than a share of what
   * was expected.
   */
  private static final double WORTH = 40;

  private static final double RESIDUE = 0.05;

  /** What leaves more of each number that was to be explained is most often a wrong valley. */
  static final double SOLVED = 1.5;

  /** How far the fits of one string stray from note to note, standard deviation of ln B. */
  public static final double STRAY = 0.015;

  /** Drive and bias to begin from, the most often successful first. */
  private static final double[][] DRIVE_AND_BIAS = {
    {4, 0.1}, {16, -0.3}, {2, -0.3}, {8, 0.1}, {1, 0.1}, {4, 0.4}, {16, 0.4}, {4, -0.3}
  };

  /** How many {@link #beginning}s there are. */
  static final int BEGINNINGS = DRIVE_AND_BIAS.length;

  /** Less than that, as a share of the misfit, is not worth another step. */
  private static final double LEAST_GAIN = 0.01;

  private static final double FIRST_DAMPING = 1e-2;
  private static final double SMALLEST_DAMPING = 1e-7;
  private static final int TRIES = 6;

  /** What leaves more of each number once the frames are weighed twice is left at that. */
  private static final double HOPELESS = 0.8;

  private final HarmonicTracks tracks;
  private final double error;
  private final OverdrivenString tone;
  private final double[] weight;
  private final double[] mean;
  private final double[] spread;
  private final double[] frameWeight;
  private final double[] odd;
  private final double[] scaleRe;
  private final double[] scaleIm;
  private final double[] power;
  private final double[] restRe;
  private final double[] restIm;
  private final double[][] normal;
  private final double[] factor;
  private final double[] gradient;
  private final double[][] rowRe;
  private final double[][] rowIm;
  private final double[] alongRe;
  private final double[] alongIm;
  private double damping;

  /**
   * @param partials of the string
   * @param error expected of each harmonic, as a share of its strength
   */
  OverdrivenStringFit(HarmonicTracks tracks, int partials, double error) {
    this.tracks = tracks;
    this.error = error;
    tone = new OverdrivenString(tracks, partials);
    int count = tone.parameters;
    weight = new double[tracks.harmonics];
    double most = 0;
    double[] middle = new double[tracks.harmonics];
    double[] sizes = new double[tracks.frames];
    for (int k = 0; k < tracks.harmonics; k++) {
      for (int f = 0; f < tracks.frames; f++) {
        sizes[f] = Math.hypot(tracks.re[k * tracks.frames + f], tracks.im[k * tracks.frames + f]);
      }
      middle[k] = RobustStatistics.median(sizes);
      most = Math.max(most, middle[k]);
    }
    for (int k = 0; k < tracks.harmonics; k++) {
      weight[k] = 1 / Math.hypot(error * middle[k], FLOOR * error * most + 1e-12);
    }
    mean = new double[count];
    spread = new double[count];
    Arrays.fill(spread, Double.POSITIVE_INFINITY);
    spread[tone.other(OverdrivenString.BIAS)] = 1;
    spread[tone.other(OverdrivenString.LOSS)] = 15;
    spread[tone.other(OverdrivenString.LOSS_HIGH)] = 15;
    spread[tone.other(OverdrivenString.DETUNE)] = 2 * Math.PI * tracks.f0Hz * 0.003;
    spread[tone.other(OverdrivenString.SETTLE)] = 2 * Math.PI * tracks.f0Hz * 0.004;
    spread[tone.other(OverdrivenString.SECOND_CENTS)] = 2;
    mean[tone.other(OverdrivenString.SECOND_SHARE)] = 0.15;
    spread[tone.other(OverdrivenString.SECOND_SHARE)] = 0.1;
    frameWeight = new double[tracks.frames];
    odd = new double[tracks.frames];
    scaleRe = new double[tracks.harmonics];
    scaleIm = new double[tracks.harmonics];
    power = new double[tracks.harmonics];
    restRe = new double[tracks.harmonics * tracks.frames];
    restIm = new double[tracks.harmonics * tracks.frames];
    normal = new double[count][count];
    factor = new double[count * count];
    gradient = new double[count];
    rowRe = new double[tracks.frames + 1][count];
    rowIm = new double[tracks.frames + 1][count];
    alongRe = new double[count];
    alongIm = new double[count];
  }

  /**
   * Parameters that a fit may have come to.
   *
   * @param parameters as {@link OverdrivenString#at} takes them
   * @param misfit that they leave
   */
  record Fitted(double[] parameters, double misfit) {
    /** The better of two; there may not be a first. */
    static Fitted better(Fitted a, Fitted b) {
      return a == null || b.misfit < a.misfit ? b : a;
    }
  }

  /**
   * Parameters to begin with: the string as it would be if the amplifier changed nothing, but so
   * much louder.
   *
   * @param which from 0, the most often successful first
   */
  double[] beginning(int which) {
    double drive = DRIVE_AND_BIAS[which][0];
    double[] p = new double[tone.parameters];
    int at = tracks.frames / 3;
    double most = 1e-12;
    for (int j = 0; j < tone.partials; j++) {
      int i = j * tracks.frames + at;
      most = Math.max(most, Math.hypot(tracks.re[i], tracks.im[i]));
    }
    for (int j = 0; j < tone.partials; j++) {
      int i = j * tracks.frames + at;
      p[j] = drive * tracks.re[i] / most;
      p[tone.partials + j] = drive * tracks.im[i] / most;
    }
    p[other(OverdrivenString.BIAS)] = DRIVE_AND_BIAS[which][1];
    p[other(OverdrivenString.LOSS)] = 3;
    p[other(OverdrivenString.LOSS_HIGH)] = 3;
    p[other(OverdrivenString.SECOND_SHARE)] = 0.15;
    return p;
  }

  /** A misfit for each number that was to be explained. */
  double left(double misfit) {
    return misfit / numbers();
  }

  /** What a misfit leaves of the harmonics, as a share of their strength. */
  double leftShare(double misfit) {
    return error * Math.sqrt(left(misfit));
  }

  /**
   * Logarithm of the likelihood that a misfit stands for, up to a constant: that of normal errors
   * whose size is not known (it goes with a power of their sum of squares).
   */
  double logLikelihood(double misfit) {
    return -0.5 * WORTH * Math.log(misfit + RESIDUE * numbers());
  }

  /** How much misfit makes the likelihood of a fit e times less, where the fit is that good. */
  double misfitPerNat(double misfit) {
    return 2 * (misfit + RESIDUE * numbers()) / WORTH;
  }

  private double numbers() {
    return (double) tracks.harmonics * tracks.frames;
  }

  /** Index of a parameter that is not of a single partial. */
  int other(int which) {
    return tone.other(which);
  }

  /** Sets what is known of the string's stiffness beforehand. */
  void expect(double lnStiffness, double lnSpread) {
    mean[tone.other(OverdrivenString.LN_STIFFNESS)] = lnStiffness;
    spread[tone.other(OverdrivenString.LN_STIFFNESS)] = lnSpread;
  }

  /**
   * Improves parameters in place.
   *
   * @param steps at most so many for each weighing of the frames
   * @param weighings of the frames
   * @return the misfit that is left, a negative log-likelihood up to a constant
   */
  double improve(double[] p, int steps, int weighings) {
    damping = FIRST_DAMPING;
    Arrays.fill(frameWeight, 1);
    tone.at(p);
    for (int w = 0; w < weighings; w++) {
      rest();
      weighFrames(w == 0);
      double before = rest() + known(p);
      double misfit = descend(p, before, steps);
      boolean settled = w > 1 && before - misfit < 0.01 * misfit;
      if (settled || w > 0 && misfit > HOPELESS * numbers()) {
        break;
      }
    }
    oddity();
    double sum = known(p);
    for (double o : odd) {
      sum += tracks.harmonics * Math.log1p(o / ODD);
    }
    return sum;
  }

  /** Goes down from a misfit, the frames' weights being as they are; where it comes to. */
  private double descend(double[] p, double from, int steps) {
    double misfit = from;
    double[] q = new double[p.length];
    for (int i = 0; i < steps; i++) {
      equations(p);
      double better = tryStep(p, q, misfit);
      if (Double.isNaN(better)) {
        damping = FIRST_DAMPING;
        tone.at(p);
        rest();
        break;
      }
      System.arraycopy(q, 0, p, 0, p.length);
      double gained = misfit - better;
      misfit = better;
      if (gained < LEAST_GAIN * misfit) {
        break;
      }
    }
    return misfit;
  }

  /**
   * One step, damped the more the oftener it leads up instead of down, and the next one the less
   * the more this one did what was foreseen (Nielsen 1999, "Damping parameter in Marquardt's
   * method"; from memory).
   *
   * @param q set to where it leads
   * @return the misfit there, NaN where none lower was found
   */
  private double tryStep(double[] p, double[] q, double misfit) {
    double growth = 2;
    for (int i = 0; i < TRIES; i++) {
      solve(p, q, damping, true);
      tone.at(q);
      double now = rest() + known(q);
      if (now < misfit) {
        double asForeseen = 2 * (misfit - now) / foreseen(p, q) - 1;
        double factor = Math.max(1 / 3.0, 1 - asForeseen * asForeseen * asForeseen);
        damping = Math.max(damping * factor, SMALLEST_DAMPING);
        return now;
      }
      damping *= growth;
      growth *= 2;
    }
    return Double.NaN;
  }

  /** How much lower the misfit would be after a step if the tone were linear. */
  private double foreseen(double[] p, double[] q) {
    double sum = 0;
    for (int i = 0; i < p.length; i++) {
      double d = q[i] - p[i];
      sum += d * (damping * (normal[i][i] + 1e-6) * d - gradient[i]);
    }
    return sum;
  }

  /**
   * How well a parameter is known where the fit is, the others being free: the root of its entry in
   * the inverse of the normal equations.
   */
  double error(double[] p, int which) {
    tone.at(p);
    rest();
    equations(p);
    Arrays.fill(gradient, 0);
    gradient[which] = 1;
    double[] q = new double[p.length];
    solve(new double[p.length], q, 0, false);
    return Math.sqrt(Math.max(0, -q[which]));
  }

  private void weighFrames(boolean first) {
    oddity();
    double at = first ? Math.max(ODD, RobustStatistics.median(odd)) : ODD;
    for (int f = 0; f < tracks.frames; f++) {
      frameWeight[f] = 1 / (1 + odd[f] / at);
    }
  }

  private void oddity() {
    Arrays.fill(odd, 0);
    for (int k = 0; k < tracks.harmonics; k++) {
      for (int f = 0; f < tracks.frames; f++) {
        int at = k * tracks.frames + f;
        odd[f] += (restRe[at] * restRe[at] + restIm[at] * restIm[at]) / tracks.harmonics;
      }
    }
  }

  /** What the tone leaves of each harmonic once scaled to it; the sum of its squares. */
  private double rest() {
    double sum = 0;
    for (int k = 0; k < tracks.harmonics; k++) {
      double gg = 1e-12;
      double re = 0;
      double im = 0;
      for (int f = 0; f < tracks.frames; f++) {
        int at = k * tracks.frames + f;
        double x = tone.re[at];
        double y = tone.im[at];
        double w = frameWeight[f];
        gg += w * (x * x + y * y);
        re += w * (x * tracks.re[at] + y * tracks.im[at]);
        im += w * (x * tracks.im[at] - y * tracks.re[at]);
      }
      re /= gg;
      im /= gg;
      power[k] = gg;
      scaleRe[k] = re;
      scaleIm[k] = im;
      for (int f = 0; f < tracks.frames; f++) {
        int at = k * tracks.frames + f;
        double x = tracks.re[at] - re * tone.re[at] + im * tone.im[at];
        double y = tracks.im[at] - re * tone.im[at] - im * tone.re[at];
        restRe[at] = x * weight[k];
        restIm[at] = y * weight[k];
        sum += frameWeight[f] * (restRe[at] * restRe[at] + restIm[at] * restIm[at]);
      }
    }
    return sum / ODD;
  }

  private double known(double[] p) {
    double sum = 0;
    for (int i = 0; i < p.length; i++) {
      double z = (p[i] - mean[i]) / spread[i];
      sum += z * z;
    }
    return sum;
  }

  /** The normal equations where the tone is. */
  private void equations(double[] p) {
    tone.changes(p);
    int count = p.length;
    for (int i = 0; i < count; i++) {
      double s2 = spread[i] * spread[i];
      Arrays.fill(normal[i], 0);
      normal[i][i] = 1 / s2;
      gradient[i] = (p[i] - mean[i]) / s2;
    }
    for (int k = 0; k < tracks.harmonics; k++) {
      along(k);
      rows(k);
      for (int i = 0; i < count; i += 2) {
        for (int f = 0; f < tracks.frames; f += 2) {
          addTwo(i, f);
        }
      }
    }
  }

  /** What of each derivative is along the harmonic itself, which is scaled freely. */
  private void along(int k) {
    Arrays.fill(alongRe, 0);
    Arrays.fill(alongIm, 0);
    for (int f = 0; f < tracks.frames; f++) {
      int at = k * tracks.frames + f;
      double x = frameWeight[f] * tone.re[at] / power[k];
      double y = frameWeight[f] * tone.im[at] / power[k];
      double[] re = tone.changeRe[at];
      double[] im = tone.changeIm[at];
      for (int i = 0; i < alongRe.length; i++) {
        alongRe[i] += x * re[i] + y * im[i];
        alongIm[i] += x * im[i] - y * re[i];
      }
    }
  }

  /** How the weighted rest of a harmonic changes with each parameter, frame by frame. */
  private void rows(int k) {
    for (int f = 0; f < tracks.frames; f++) {
      int at = k * tracks.frames + f;
      double root = Math.sqrt(frameWeight[f] / ODD);
      double hr = -scaleRe[k] * weight[k] * root;
      double hi = -scaleIm[k] * weight[k] * root;
      double x = tone.re[at];
      double y = tone.im[at];
      double rr = restRe[at] * root;
      double ri = restIm[at] * root;
      double[] re = tone.changeRe[at];
      double[] im = tone.changeIm[at];
      double[] toRe = rowRe[f];
      double[] toIm = rowIm[f];
      for (int i = 0; i < alongRe.length; i++) {
        double a = re[i] - alongRe[i] * x + alongIm[i] * y;
        double b = im[i] - alongRe[i] * y - alongIm[i] * x;
        toRe[i] = hr * a - hi * b;
        toIm[i] = hr * b + hi * a;
        gradient[i] += toRe[i] * rr + toIm[i] * ri;
      }
    }
  }

  /**
   * Adds two frames' share to two rows of the normal equations; a frame of zeros follows the last.
   */
  private void addTwo(int i, int f) {
    double[] to = normal[i];
    double[] toNext = normal[i + 1];
    double[] re = rowRe[f];
    double[] im = rowIm[f];
    double[] nextRe = rowRe[f + 1];
    double[] nextIm = rowIm[f + 1];
    double a = re[i];
    double b = im[i];
    double c = nextRe[i];
    double d = nextIm[i];
    double e = re[i + 1];
    double g = im[i + 1];
    double h = nextRe[i + 1];
    double l = nextIm[i + 1];
    for (int j = 0; j <= i + 1; j++) {
      double x = re[j];
      double y = im[j];
      double z = nextRe[j];
      double w = nextIm[j];
      to[j] += a * x + b * y + c * z + d * w;
      toNext[j] += e * x + g * y + h * z + l * w;
    }
  }

  private void solve(double[] p, double[] q, double damping, boolean bounded) {
    int count = p.length;
    for (int i = 0; i < count; i++) {
      for (int j = 0; j <= i; j++) {
        double sum = normal[i][j];
        if (i == j) {
          sum += damping * (sum + 1e-6);
        }
        sum -= DotProduct.of(factor, i * count, factor, j * count, j);
        factor[i * count + j] =
            i == j ? Math.sqrt(Math.max(sum, 1e-12)) : sum / factor[j * count + j];
      }
    }
    for (int i = 0; i < count; i++) {
      double sum = gradient[i];
      for (int m = 0; m < i; m++) {
        sum -= factor[i * count + m] * q[m];
      }
      q[i] = sum / factor[i * count + i];
    }
    for (int i = count - 1; i >= 0; i--) {
      double sum = q[i];
      for (int m = i + 1; m < count; m++) {
        sum -= factor[m * count + i] * q[m];
      }
      q[i] = sum / factor[i * count + i];
    }
    for (int i = 0; i < count; i++) {
      q[i] = p[i] - q[i];
    }
    if (!bounded) {
      return;
    }
    for (int which : new int[] {OverdrivenString.LOSS, OverdrivenString.LOSS_HIGH}) {
      int i = tone.other(which);
      q[i] = Math.max(0, Math.min(80, q[i]));
    }
    int second = tone.other(OverdrivenString.SECOND_SHARE);
    q[second] = Math.max(0, Math.min(0.5, q[second]));
  }
}
