package neckway.calibration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import neckway.string.Stiffness;
import neckway.string.StiffnessCurve;
import neckway.string.StringProfile;

/**
 * The stiffness of one open string from what its plucks tell, each by its whole likelihood: a grid
 * over ln B and over how far the string strays from note to note. Any pluck may be bad (another
 * string, a buzz) and then tells nothing; so one bad pluck among several does not move the string.
 */
final class LearntString {
  /** Chance of a bad pluck, beforehand. */
  static final double BAD_SHARE = 0.1;

  /** A pluck is left out of account when it is this likely to be bad. */
  private static final double ODD = 0.7;

  /**
   * How far ln B, brought down to the open string, may stray from note to note (standard
   * deviations), and how likely that is beforehand. On the frets of a recorded solid-body electric
   * it was 0.01 to 0.05, string by string.
   */
  private static final double[] SPREADS = {0.01, 0.02, 0.035, 0.06, 0.1, 0.17, 0.3};

  private static final double[] SPREAD_SHARES = {0.17, 0.2, 0.25, 0.19, 0.12, 0.05, 0.02};

  /** Frets that what is expected of a string's spread counts as, beside those plucked. */
  private static final double EXPECTED_FRETS = 2;

  /** What lies farther from the likeliest ln B is another answer. */
  private static final double NEAR = 0.5;

  private static final double STEP = 0.01;
  private static final double LOWEST = Math.log(Stiffness.LOWEST);
  private static final int GRID =
      1 + (int) Math.ceil((Math.log(Stiffness.HIGHEST) - LOWEST) / STEP);

  /** One pluck and the fret that it was plucked at. */
  record At(int fret, Pluck pluck) {}

  final double lnStiffness;

  /**
   * How far one more note's ln B may be from {@link #lnStiffness}: from note to note, what is not
   * known of the string, and how well its frets agree with each other.
   */
  final double spread;

  /** Probability that the string's ln B lies nowhere near {@link #lnStiffness}. */
  final double doubt;

  final List<At> used = new ArrayList<>();
  final List<At> odd = new ArrayList<>();

  /**
   * @param openMidi MIDI note number of the open string
   * @param plucks at least one; those that tell something
   */
  LearntString(int openMidi, List<At> plucks) {
    double usual = UsualStrings.lnStiffness(openMidi);
    double[][] likelihood = new double[plucks.size()][];
    for (int i = 0; i < likelihood.length; i++) {
      likelihood[i] = likelihood(plucks.get(i));
    }
    double[][] joint = new double[SPREADS.length][];
    double[][][] smooth = new double[SPREADS.length][likelihood.length][];
    double top = Double.NEGATIVE_INFINITY;
    int topSpread = 0;
    int topAt = 0;
    for (int s = 0; s < SPREADS.length; s++) {
      joint[s] = new double[GRID];
      for (int i = 0; i < likelihood.length; i++) {
        smooth[s][i] = smoothed(likelihood[i], SPREADS[s]);
        for (int x = 0; x < GRID; x++) {
          joint[s][x] += Math.log((1 - BAD_SHARE) * smooth[s][i][x] + BAD_SHARE);
        }
      }
      for (int x = 0; x < GRID; x++) {
        double z = (LOWEST + x * STEP - usual) / UsualStrings.SPREAD;
        joint[s][x] += Math.log(SPREAD_SHARES[s]) - 0.5 * z * z;
        if (joint[s][x] > top) {
          top = joint[s][x];
          topSpread = s;
          topAt = x;
        }
      }
    }
    int near = (int) Math.round(NEAR / STEP);
    double all = 0;
    double sum = 0;
    double squares = 0;
    double straying = 0;
    double elsewhere = 0;
    for (int s = 0; s < SPREADS.length; s++) {
      for (int x = 0; x < GRID; x++) {
        double p = Math.exp(joint[s][x] - top);
        double ln = LOWEST + x * STEP;
        if (Math.abs(x - topAt) > near) {
          elsewhere += p;
          continue;
        }
        all += p;
        sum += p * ln;
        squares += p * ln * ln;
        straying += p * SPREADS[s] * SPREADS[s];
      }
    }
    lnStiffness = sum / all;
    doubt = elsewhere / (all + elsewhere);
    double variance = straying / all + Math.max(0, squares / all - lnStiffness * lnStiffness);
    List<Integer> good = new ArrayList<>();
    for (int i = 0; i < likelihood.length; i++) {
      double fits = (1 - BAD_SHARE) * smooth[topSpread][i][topAt];
      boolean bad = BAD_SHARE / (BAD_SHARE + fits) > ODD;
      (bad ? odd : used).add(plucks.get(i));
      if (!bad) {
        good.add(i);
      }
    }
    double agreed = agreement(plucks, likelihood, good, variance);
    spread = Math.hypot(Math.sqrt(Math.max(variance, agreed)), commonError(plucks));
  }

  /**
   * How far each fret lies from where the others put it: the mean square of those distances, each
   * fret left out in turn (cross-validation: Stone 1974), beside what was expected of it, which
   * counts as {@link #EXPECTED_FRETS} more. Where one fret was plucked only there is nothing to
   * hold it against.
   *
   * @param expected variance of one more note by the plucks' likelihoods
   */
  private double agreement(
      List<At> plucks, double[][] likelihood, List<Integer> good, double expected) {
    double squares = EXPECTED_FRETS * expected;
    double frets = EXPECTED_FRETS;
    for (int fret : good.stream().map(i -> plucks.get(i).fret()).distinct().toList()) {
      double[] here = new double[GRID];
      double[] others = new double[GRID];
      for (int i : good) {
        double[] sum = plucks.get(i).fret() == fret ? here : others;
        for (int x = 0; x < GRID; x++) {
          sum[x] += Math.log((1 - BAD_SHARE) * likelihood[i][x] + BAD_SHARE);
        }
      }
      if (good.stream().anyMatch(i -> plucks.get(i).fret() != fret)) {
        double distance = middle(here) - middle(others);
        squares += distance * distance;
        frets++;
      }
    }
    return squares / frets;
  }

  /** Mean of ln B near what was learnt, by what some of the plucks tell. */
  private double middle(double[] log) {
    int near = (int) Math.round(NEAR / STEP);
    int at = (int) Math.round((lnStiffness - LOWEST) / STEP);
    int from = Math.max(0, at - near);
    int to = Math.min(GRID - 1, at + near);
    double top = Arrays.stream(log, from, to + 1).max().orElseThrow();
    double sum = 0;
    double all = 0;
    for (int x = from; x <= to; x++) {
      double p = Math.exp(log[x] - top);
      sum += p * (LOWEST + x * STEP);
      all += p;
    }
    return sum / all;
  }

  private double commonError(List<At> plucks) {
    return plucks.stream()
        .mapToDouble(
            at ->
                at.pluck()
                    .stiffness()
                    .orElseThrow()
                    .commonError(lnStiffness + StringProfile.LN_PER_FRET * at.fret()))
        .average()
        .orElseThrow();
  }

  /** Likelihood over ln B of the open string, 1 in the mean. */
  private static double[] likelihood(At at) {
    StiffnessCurve curve = at.pluck().stiffness().orElseThrow();
    double[] p = new double[GRID];
    double top = Double.NEGATIVE_INFINITY;
    for (int x = 0; x < GRID; x++) {
      p[x] = curve.logLikelihood(LOWEST + x * STEP + StringProfile.LN_PER_FRET * at.fret());
      top = Math.max(top, p[x]);
    }
    double sum = 0;
    for (int x = 0; x < GRID; x++) {
      p[x] = Math.exp(p[x] - top);
      sum += p[x];
    }
    for (int x = 0; x < GRID; x++) {
      p[x] *= GRID / sum;
    }
    return p;
  }

  /** The likelihood where B strays by a normal distribution; level beyond the ends. */
  private static double[] smoothed(double[] p, double spread) {
    int reach = (int) Math.ceil(3.5 * spread / STEP);
    double[] bell = new double[reach + 1];
    double all = 0;
    for (int i = 0; i <= reach; i++) {
      double z = i * STEP / spread;
      bell[i] = Math.exp(-0.5 * z * z);
      all += i == 0 ? bell[i] : 2 * bell[i];
    }
    double[] smooth = new double[GRID];
    for (int x = 0; x < GRID; x++) {
      double sum = 0;
      for (int i = -reach; i <= reach; i++) {
        sum += bell[Math.abs(i)] * p[Math.max(0, Math.min(GRID - 1, x + i))];
      }
      smooth[x] = sum / all;
    }
    return smooth;
  }
}
