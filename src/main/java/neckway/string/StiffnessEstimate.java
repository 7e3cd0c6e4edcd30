package neckway.string;

import java.util.function.DoubleUnaryOperator;

/**
 * What one note's sound tells of its string's stiffness: the likelihood of every B from {@link
 * Stiffness#LOWEST} to {@link Stiffness#HIGHEST}. It may have several humps or none, so compare
 * strings by {@link #logLikelihood(double, double)}, not by the best B.
 */
public final class StiffnessEstimate implements StiffnessCurve {
  /** How far into the flanks of a candidate's own spread to look, in standard deviations. */
  private static final int FLANK = 3;

  private static final int PARTS = 4;

  /** The same of a string, whose notes stray by Student's distribution. */
  private static final int STRING_FLANK = 8;

  /** Nothing known beforehand of whether the sound is driven. */
  static final double EVEN = 0.5;

  private final double[] grid;
  private final double[] clean;
  private final double[] driven;
  private final double[] curve;
  private final double drivenBeforehand;
  private final double best;
  private final double standardError;

  /**
   * @param grid ln B, evenly spaced
   * @param clean log-likelihood at each where the sound has hardly any exact harmonics
   * @param driven the same where it is full of them
   * @param drivenBeforehand probability of the latter before this note was heard
   */
  public StiffnessEstimate(
      double[] grid, double[] clean, double[] driven, double drivenBeforehand) {
    this.grid = grid;
    this.clean = clean;
    this.driven = driven;
    curve = new double[grid.length];
    for (int i = 0; i < curve.length; i++) {
      curve[i] =
          sum(clean[i] + Math.log(1 - drivenBeforehand), driven[i] + Math.log(drivenBeforehand));
    }
    this.drivenBeforehand = drivenBeforehand;
    int top = 0;
    for (int i = 1; i < curve.length; i++) {
      top = curve[i] > curve[top] ? i : top;
    }
    best = grid[top] + summit(top) * (grid[1] - grid[0]);
    double weights = 0;
    double squares = 0;
    for (int i = 0; i < curve.length; i++) {
      double weight = Math.exp(curve[i] - curve[top]);
      weights += weight;
      squares += weight * (grid[i] - best) * (grid[i] - best);
    }
    standardError = Math.sqrt(squares / weights);
  }

  /** Logarithm of the sum of two likelihoods that are given by their logarithms. */
  static double sum(double a, double b) {
    return Math.max(a, b) + Math.log(1 + Math.exp(-Math.abs(a - b)));
  }

  /**
   * The same note where more is known of the sound, from other notes of the take or the amplifier.
   *
   * @param beforehand probability that the sound is full of exact harmonics, as an overdriven
   *     amplifier makes them; above 0 and below 1
   */
  public StiffnessEstimate givenDriven(double beforehand) {
    if (!(beforehand > 0 && beforehand < 1)) {
      throw new IllegalArgumentException("a probability of " + beforehand);
    }
    return new StiffnessEstimate(grid, clean, driven, beforehand);
  }

  /** How likely the sound was taken to be full of exact harmonics before this note was heard. */
  double drivenBeforehand() {
    return drivenBeforehand;
  }

  /**
   * What this note tells of the sound: the logarithm of how much likelier it is in sound that is
   * full of exact harmonics, all B being as likely. Sum it over the notes of a take, each held
   * within a few nats.
   */
  public double drivenEvidence() {
    double evidenceDriven = Double.NEGATIVE_INFINITY;
    double evidenceClean = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < grid.length; i++) {
      evidenceDriven = sum(evidenceDriven, driven[i]);
      evidenceClean = sum(evidenceClean, clean[i]);
    }
    return evidenceDriven - evidenceClean;
  }

  private double summit(int top) {
    if (top == 0 || top == curve.length - 1) {
      return 0;
    }
    double curvature = curve[top - 1] - 2 * curve[top] + curve[top + 1];
    return curvature < 0 ? 0.5 * (curve[top - 1] - curve[top + 1]) / curvature : 0;
  }

  /** Natural logarithm of the likeliest B. */
  public double lnStiffness() {
    return best;
  }

  /**
   * Root mean square distance of ln B from the likeliest, all B being as likely beforehand; above 1
   * next to nothing is known.
   */
  public double standardError() {
    return standardError;
  }

  /** {@inheritDoc} Beyond the ends of the grid it goes on level. */
  @Override
  public double logLikelihood(double lnStiffness) {
    double at = (lnStiffness - grid[0]) / (grid[1] - grid[0]);
    int i = Math.max(0, Math.min(curve.length - 2, (int) Math.floor(at)));
    double part = Math.max(0, Math.min(1, at - i));
    return curve[i] + part * (curve[i + 1] - curve[i]);
  }

  /**
   * How well a string fits whose B is itself known only so well.
   *
   * @param lnStiffness natural logarithm of the B expected there
   * @param spread standard deviation of that logarithm from note to note, 0 or more
   * @return logarithm of the likelihood averaged over the spread, up to the same constant
   */
  public double logLikelihood(double lnStiffness, double spread) {
    return averaged(lnStiffness, spread, FLANK, z -> Math.exp(-0.5 * z * z));
  }

  /**
   * The same of a learnt string, whose notes stray as {@link Straying} says: farther now and then
   * than by a normal distribution.
   *
   * @param spread of {@link Straying}, 0 or more
   */
  public double logLikelihoodOfString(double lnStiffness, double spread) {
    return averaged(lnStiffness, spread, STRING_FLANK, z -> Math.exp(Straying.log(z)));
  }

  private double averaged(
      double lnStiffness, double spread, int flank, DoubleUnaryOperator density) {
    double top = Double.NEGATIVE_INFINITY;
    double sum = 0;
    double weights = 0;
    for (int i = -flank * PARTS; i <= flank * PARTS; i++) {
      double z = (double) i / PARTS;
      double weight = density.applyAsDouble(z);
      double l = logLikelihood(lnStiffness + z * spread);
      if (l > top) {
        sum = sum * Math.exp(top - l);
        top = l;
      }
      sum += weight * Math.exp(l - top);
      weights += weight;
    }
    return top + Math.log(sum / weights);
  }
}
