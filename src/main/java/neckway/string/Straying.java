package neckway.string;

/**
 * How the ln B of one more note strays from what was learnt of its string: by Student's t
 * distribution. That is what is to be expected of one more value where mean and spread are both
 * known from a few values only (Student 1908; Gelman et al., Bayesian Data Analysis, section 3.2,
 * from memory): the spread of four plucks may be half of the true one.
 */
public final class Straying {
  /** Four plucks a string leave three; what is known of strings beforehand counts as one more. */
  static final double DEGREES_OF_FREEDOM = 4;

  private Straying() {}

  /**
   * Logarithm of the density, up to a constant.
   *
   * @param z distance in spreads
   */
  public static double log(double z) {
    return -0.5 * (DEGREES_OF_FREEDOM + 1) * Math.log1p(z * z / DEGREES_OF_FREEDOM);
  }
}
