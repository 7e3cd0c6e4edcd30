package neckway.place;

import java.util.Arrays;
import java.util.Optional;

/** What tests make of evidence, and evidence for tests. */
public final class Evidence {
  private Evidence() {}

  /** The likeliest string's share of the likelihood of all that have the pitch. */
  static double share(StringEvidence evidence) {
    double[] log = evidence.logs();
    double most = Arrays.stream(log).max().orElseThrow();
    return 1 / Arrays.stream(log).map(l -> Math.exp(l - most)).sum();
  }

  /** A reading of which any B is as likely. */
  static StiffnessReading level(double driven) {
    double[] grid = {Math.log(Stiffness.LOWEST), Math.log(Stiffness.HIGHEST)};
    return new StiffnessReading(220, grid, new double[2], new double[2], driven, 20);
  }

  /** Evidence of a note in sound that is surely overdriven. */
  public static StringEvidence overdriven(double[] log) {
    return overdriven(log, 0.99);
  }

  /** Evidence of a note in sound that was taken to be overdriven with a probability. */
  static StringEvidence overdriven(double[] log, double driven) {
    return new StringEvidence(log, Optional.of(level(driven)), Optional.empty());
  }
}
