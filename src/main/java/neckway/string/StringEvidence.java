package neckway.string;

import java.util.Arrays;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import neckway.neck.GuitarString;

/** How well the sound of one note fits each string that has its pitch. */
public final class StringEvidence {
  private static final double DRIVEN = 0.5;

  private final double[] logByNumber;
  private final Optional<StiffnessEstimate> estimate;
  private final Optional<Function<Set<GuitarString>, StringEvidence>> closer;

  /**
   * @param logByNumber logarithm of the likelihood by string number less one, up to a constant;
   *     negative infinity where the string does not have the pitch
   */
  public StringEvidence(double[] logByNumber) {
    this(logByNumber, Optional.empty(), Optional.empty());
  }

  /**
   * The same with the estimate that it comes of, and how to look closer.
   *
   * @param closer weighs some of the strings against each other with much more work; empty where
   *     that was done, or tells no more
   */
  public StringEvidence(
      double[] logByNumber,
      Optional<StiffnessEstimate> estimate,
      Optional<Function<Set<GuitarString>, StringEvidence>> closer) {
    for (double log : logByNumber) {
      if (Double.isNaN(log) || log == Double.POSITIVE_INFINITY) {
        throw new IllegalArgumentException("a log-likelihood of " + log);
      }
    }
    this.logByNumber = logByNumber.clone();
    this.estimate = estimate;
    this.closer = closer;
  }

  /** Whether a closer look may tell more. */
  public boolean open() {
    return closer.isPresent();
  }

  /**
   * What a closer look tells; this itself where there is none.
   *
   * @param strings that may have been played, all that have the pitch
   */
  public StringEvidence closer(Set<GuitarString> strings) {
    return closer.map(look -> look.apply(strings)).orElse(this);
  }

  /** The same without a closer look, which holds the note's sound. */
  public StringEvidence settled() {
    return open() ? new StringEvidence(logByNumber, estimate, Optional.empty()) : this;
  }

  /** Logarithm of the likelihood of a string, up to a constant. */
  public double log(GuitarString string) {
    int index = string.number() - 1;
    return index < logByNumber.length ? logByNumber[index] : Double.NEGATIVE_INFINITY;
  }

  /** Logarithm of the likelihood by string number less one. */
  public double[] logs() {
    return logByNumber.clone();
  }

  /** Whether the sound was taken to be overdriven. */
  public boolean driven() {
    return estimate.filter(r -> r.drivenBeforehand() > DRIVEN).isPresent();
  }

  /** The estimate that this comes of, if there was one. */
  public Optional<StiffnessEstimate> estimate() {
    return estimate;
  }

  @Override
  public String toString() {
    return Arrays.toString(logByNumber);
  }
}
