package neckway.calibration;

import java.util.Optional;
import neckway.string.StiffnessCurve;

/**
 * One note of a calibration take.
 *
 * @param time onset in seconds from the first sample of the take
 * @param pitch MIDI note number with its fraction, A4 = 440 Hz
 * @param stiffness what its sound tells of B of the sounding length; empty where it tells nothing
 */
public record Pluck(double time, double pitch, Optional<StiffnessCurve> stiffness) {}
