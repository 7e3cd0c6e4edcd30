package neckway.follow;

/**
 * How far the notes may be taken for this drill at all. A stranger's run, speech or noise meets the
 * expected pitch now and then; so at first, and after several slips, a fitting note is called right
 * only together with others in a row. How long a row is needed depends on where it begins: on the
 * bottom note after silence two notes, elsewhere more. Scales of neighbouring keys share four notes
 * of five, so that four in a row say little.
 */
final class FitGate {
  /** Fitting notes in a row that are needed where it begins at the bottom, after silence. */
  static final int ROW_FROM_BOTTOM = 2;

  /** Where it begins there or a step or two later in the midst of other notes. */
  static final int ROW_FROM_NEAR_BOTTOM = 5;

  /** Where it begins elsewhere, as in a take that was cut at the front. */
  static final int ROW_FROM_ANYWHERE = 8;

  /** After too many slips. */
  static final int ROW_AFTER_SLIPS = 3;

  private static final int NEAR_BOTTOM = 2;
  private static final int SOON = 6;
  private static final int MOST_LENT = 3;
  private static final double MOST = 4;
  private static final double AT_FIRST = 2;

  private double points;
  private boolean trustedOnce;
  private int lent;

  boolean trusted() {
    return points > 0;
  }

  /** Whether the notes ever fitted. */
  boolean trustedOnce() {
    return trustedOnce;
  }

  /**
   * Fitting notes in a row that are needed.
   *
   * @param firstStep where the row begins
   * @param afterSilence whether there was silence before it
   */
  int rowNeeded(int firstStep, boolean afterSilence) {
    if (trusted()) {
      return 1;
    }
    boolean bottomHeard = lent > 0 && firstStep <= SOON;
    if (firstStep == 0 && afterSilence || bottomHeard) {
      return ROW_FROM_BOTTOM;
    }
    if (trustedOnce) {
      return ROW_AFTER_SLIPS;
    }
    return firstStep <= NEAR_BOTTOM ? ROW_FROM_NEAR_BOTTOM : ROW_FROM_ANYWHERE;
  }

  /** How many notes an open one may have to wait for. */
  int longestRow() {
    if (trusted()) {
      return 1;
    }
    return trustedOnce || lent > 0 ? ROW_AFTER_SLIPS : ROW_FROM_NEAR_BOTTOM;
  }

  /**
   * Whether a fitting note may be called right on its own, when no other came to prove it: a few
   * times at and after the bottom note, once after slips.
   */
  boolean mayLend(int step, boolean afterSilence) {
    if (trustedOnce) {
      return lent == 0;
    }
    boolean bottom = step == 0 && afterSilence;
    return lent < MOST_LENT && (bottom || lent > 0 && step <= SOON);
  }

  /** A verdict was given; of a right one, whether the row that it needed was there. */
  void given(Verdict verdict, boolean proved) {
    points =
        switch (verdict) {
          case RIGHT -> afterRight(proved);
          case WRONG, EXTRA -> Math.max(0, points - 1);
          // it fits as well as it does not
          case REPEAT -> points;
        };
  }

  private double afterRight(boolean proved) {
    if (trusted()) {
      return Math.min(MOST, points + 1);
    }
    if (proved) {
      trustedOnce = true;
      lent = 0;
      return AT_FIRST;
    }
    lent++;
    return points;
  }
}
