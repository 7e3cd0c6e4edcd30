package neckway.hand;

import java.util.Arrays;
import java.util.Optional;
import neckway.string.Stiffness;
import neckway.string.StiffnessEstimate;
import neckway.string.StringEvidence;

/** What tests make of evidence, and evidence for tests. */
public final class Evidence {
  private Evidence() {}

  /** The likeliest string's share of the likelihood of all that have the pitch. */
  public static double share(StringEvidence evidence) {
    double[] log = evidence.logs();
    double most = Arrays.stream(log).max().orElseThrow();
    return 1 / Arrays.stream(log).map(l -> Math.exp(l - most)).sum();
  }

  /** Evidence of which nothing but the likelihoods is known. */
  public static StringEvidence of(double[] log) {
    return new StringEvidence(log, Optional.empty(), Optional.empty());
  }

  /** A curve on which any B is as likely. */
  public static StiffnessEstimate level(double driven) {
    double[] grid = {Math.log(Stiffness.LOWEST), Math.log(Stiffness.HIGHEST)};
    return new StiffnessEstimate(grid, new double[2], new double[2], driven);
  }

  /** Evidence of a note in sound that is surely overdriven. */
  public static StringEvidence overdriven(double[] log) {
    return overdriven(log, 0.99);
  }

  /** Evidence of a note in sound that was taken to be overdriven with a probability. */
  public static StringEvidence overdriven(double[] log, double driven) {
    return new StringEvidence(log, Optional.of(level(driven)), Optional.empty());
  }
}
