package neckway.string;

/**
 * What the sound of one note tells of the stiffness of its string: B in f_k = k f0 sqrt(1 + B k^2)
 * (Fletcher 1964).
 */
public interface StiffnessCurve {
  /**
   * How well a stiffness fits the sound.
   *
   * @param lnStiffness natural logarithm of B of the sounding length
   * @return logarithm of the likelihood, up to a constant that is the same for every stiffness
   */
  double logLikelihood(double lnStiffness);

  /**
   * By how much all notes of a string may be read wrongly alike, standard deviation of ln B: more
   * of them do not help against that.
   *
   * @param lnStiffness natural logarithm of B, where the string is
   */
  default double commonError(double lnStiffness) {
    return 0;
  }
}
