package neckway.string;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import neckway.string.amp.OverdrivenNote;
import org.junit.jupiter.api.Test;

/** A first string of 14 millionths whose spectrum says so and whose fit says more. */
class OverdrivenCurveTests {
  private static final double TRUE = Math.log(14e-6);
  private static final double FITTED = TRUE + 0.45;

  private static OverdrivenCurve curve(double driven) {
    double[] grid = new double[201];
    double[] spectrum = new double[201];
    for (int i = 0; i < grid.length; i++) {
      grid[i] = TRUE + 0.01 * (i - 100);
      double z = (grid[i] - TRUE) / 0.25;
      spectrum[i] = -0.5 * z * z;
    }
    return new OverdrivenCurve(
        new StiffnessEstimate(grid, spectrum, spectrum, driven),
        new OverdrivenNote.Optima(
            List.of(new OverdrivenNote.Optimum(FITTED, 0.06, -80)), 0.053, 12));
  }

  @Test
  void inCleanSoundTheSpectrumIsBelieved() {
    OverdrivenCurve clean = curve(0.01);
    assertThat(clean.logLikelihood(TRUE)).isGreaterThan(clean.logLikelihood(FITTED));
  }

  @Test
  void inOverdrivenSoundTheFitIsBelieved() {
    OverdrivenCurve driven = curve(0.99);
    assertThat(driven.logLikelihood(FITTED)).isGreaterThan(driven.logLikelihood(TRUE));
  }
}
