package neckway.string;

import java.util.Locale;

/**
 * How well two strings are told apart by one note of the same pitch. With their ln B {@code d}
 * standard deviations apart and a bound half way, the chance of taking one for the other is the
 * normal distribution's tail beyond d / 2.
 */
public enum Telling {
  /** One note in a hundred is confused, or fewer. */
  WELL(2 * 2.326),
  /** One note in ten is confused, or fewer. */
  FAIRLY(2 * 1.282),
  /** More are confused. */
  NOT(0);

  private final double leastDeviations;

  Telling(double leastDeviations) {
    this.leastDeviations = leastDeviations;
  }

  /**
   * The word for a distance.
   *
   * @param deviations as {@link GuitarProfile#apart}, 0 or more
   */
  public static Telling of(double deviations) {
    if (!(deviations >= 0)) {
      throw new IllegalArgumentException(deviations + " standard deviations");
    }
    return deviations >= WELL.leastDeviations
        ? WELL
        : deviations >= FAIRLY.leastDeviations ? FAIRLY : NOT;
  }

  /** As files and tables have it: well, fairly, not. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
