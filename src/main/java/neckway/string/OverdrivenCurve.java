package neckway.string;

import neckway.string.amp.OverdrivenNote;
import neckway.string.amp.OverdrivenStringFit;

/**
 * What a note tells of its string's stiffness whose sound was fitted: a hump at each stiffness that
 * fits, over what its spectrum alone tells.
 *
 * @param spectrum that
 * @param fits the stiffnesses that fit
 */
public record OverdrivenCurve(StiffnessEstimate spectrum, OverdrivenNote.Optima fits)
    implements StiffnessCurve {
  /** What the spectrum counts beside them in overdriven sound; in other it counts whole. */
  private static final double SPECTRUM_DRIVEN = 0.2;

  /**
   * In clean sound the fit of an amplifier that does nothing is the worse of the two: the formula's
   * error counts so many times there.
   */
  private static final double CLEAN_ERRORS = 3;

  private static final double RANGE = Math.log(Stiffness.HIGHEST / Stiffness.LOWEST);

  @Override
  public double logLikelihood(double lnStiffness) {
    double driven = spectrum.drivenBeforehand();
    double errors = driven + (1 - driven) * CLEAN_ERRORS;
    double top = fits.all().get(0).logLikelihood();
    double all = 0;
    double here = 0;
    for (OverdrivenNote.Optimum optimum : fits.all()) {
      double share = Math.exp(optimum.logLikelihood() - top);
      double own = Math.hypot(OverdrivenStringFit.STRAY, optimum.error());
      double error = Math.hypot(own, errors * fits.formulaError(optimum.lnStiffness()));
      double z = (lnStiffness - optimum.lnStiffness()) / error;
      all += share;
      here += share * Math.exp(-0.5 * z * z) / (error * Math.sqrt(2 * Math.PI));
    }
    double weight = 1 - (1 - SPECTRUM_DRIVEN) * driven;
    return weight * spectrum.logLikelihood(lnStiffness)
        + Math.log((1 - fits.astray()) * here / all + fits.astray() / RANGE);
  }

  /** In overdriven sound nothing else tells of the string than the amplifier's harmonics. */
  @Override
  public double commonError(double lnStiffness) {
    return spectrum.drivenBeforehand() * fits.formulaError(lnStiffness);
  }
}
