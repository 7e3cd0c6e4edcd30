package neckway.bench;

import java.util.List;
import java.util.OptionalDouble;

/**
 * A take with known truth.
 *
 * @param name which family, seed and conditions
 * @param sampleRate Hz
 * @param samples from -1 to 1
 * @param notes the truth, in order of time
 * @param tuningCents the guitar's offset from A4 = 440 Hz
 * @param firstBeat seconds; empty where clicks are not to be expected
 * @param beatSeconds seconds from beat to beat
 */
public record Take(
    String name,
    double sampleRate,
    float[] samples,
    List<TrueNote> notes,
    double tuningCents,
    OptionalDouble firstBeat,
    double beatSeconds) {
  public double seconds() {
    return samples.length / sampleRate;
  }
}
