package neckway.place;

/**
 * What a note tells of its string's stiffness whose sound was fitted: a hump at each stiffness that
 * fits, over what its spectrum alone tells.
 *
 * @param spectrum that
 * @param fits the stiffnesses that fit
 */
record OverdrivenCurve(StiffnessReading spectrum, OverdrivenNote.Optima fits)
    implements StiffnessCurve {
  /** What the spectrum counts beside them, in overdriven sound and in other. */
  private static final double SPECTRUM_DRIVEN = 0.2;

  private static final double SPECTRUM_CLEAN = 0.5;

  private static final double RANGE = Math.log(Stiffness.HIGHEST / Stiffness.LOWEST);

  @Override
  public double logLikelihood(double lnStiffness) {
    double top = fits.all().get(0).logLikelihood();
    double all = 0;
    double here = 0;
    for (OverdrivenNote.Optimum optimum : fits.all()) {
      double share = Math.exp(optimum.logLikelihood() - top);
      double own = Math.hypot(OverdrivenNote.STRAY, optimum.error());
      double error = Math.hypot(own, fits.formulaError(optimum.lnStiffness()));
      double z = (lnStiffness - optimum.lnStiffness()) / error;
      all += share;
      here += share * Math.exp(-0.5 * z * z) / (error * Math.sqrt(2 * Math.PI));
    }
    double weight =
        SPECTRUM_CLEAN + (SPECTRUM_DRIVEN - SPECTRUM_CLEAN) * spectrum.drivenBeforehand();
    return weight * spectrum.logLikelihood(lnStiffness)
        + Math.log((1 - fits.astray()) * here / all + fits.astray() / RANGE);
  }

  /** In overdriven sound nothing else tells of the string than the amplifier's harmonics. */
  @Override
  public double commonError(double lnStiffness) {
    return spectrum.drivenBeforehand() * fits.formulaError(lnStiffness);
  }
}
