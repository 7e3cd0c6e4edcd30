package neckway.place;

import java.util.Optional;

/**
 * One note of a calibration take.
 *
 * @param time onset in seconds from the first sample of the take
 * @param pitch MIDI note number with its fraction, A4 = 440 Hz
 * @param stiffness what its sound tells of B; empty where it tells nothing
 */
public record Pluck(double time, double pitch, Optional<Reading> stiffness) {
  /**
   * A reading of the sounding length's stiffness.
   *
   * @param lnStiffness natural logarithm of B
   * @param error standard error of that logarithm, above 0
   */
  public record Reading(double lnStiffness, double error) {
    public Reading {
      if (!Double.isFinite(lnStiffness) || !(error > 0) || !Double.isFinite(error)) {
        throw new IllegalArgumentException("ln B " + lnStiffness + ", error " + error);
      }
    }
  }
}
