package neckway.calibration;

import java.util.List;
import neckway.string.GuitarProfile;

/**
 * What a calibration take taught.
 *
 * @param profile the guitar
 * @param findings what to know of the take, in the order of the sequence
 */
public record Calibrated(GuitarProfile profile, List<Finding> findings) {
  public Calibrated {
    findings = List.copyOf(findings);
  }
}
