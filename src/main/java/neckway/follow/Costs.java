package neckway.follow;

/**
 * What each hypothesis of a note costs, in natural logarithms of how rare it is. The figures are
 * ours: about one slip of each kind in a hundred notes, and a wrong or stray pitch spread over some
 * four to ten likely ones. Common practice, no published source.
 */
final class Costs {
  /** The step that was due, with its pitch. */
  static final double RIGHT = 0.05;

  /** One step left out. */
  static final double SKIP = 4.6;

  /** A second step left out with it. */
  static final double SKIP_SECOND = 1.5;

  /** Each further one. */
  static final double SKIP_MORE = 0.7;

  /** Turning round on the top note of a shape below the highest one, however many steps go. */
  static final double TURN = 4.6;

  /** Another pitch in place of a step. */
  static final double WRONG = 6.0;

  /** The step just played, struck again. */
  static final double REPEAT = 4.2;

  /** A note that belongs nowhere. */
  static final double EXTRA = 6.0;

  /** A note before the beginning, where nothing says when that is, or after the end. */
  static final double OUTSIDE = 5.5;

  /** A note well before the first beat. */
  static final double BEFORE_FIRST_BEAT = 1.0;

  /** Beginning well before the first beat. */
  static final double TOO_EARLY = 2.0;

  /** A wrong or stray note that happens to be the step after the one due. */
  static final double HAPPENS_TO_FIT = 0.4;

  /** A step whose pitch the ear takes for one of which it is a harmonic. */
  static final double UNNAMED = 3.5;

  /** A note that the ear made up. */
  static final double DECEIVED = 2;

  /** The name of a step that was played but not named, come at last. */
  static final double NAMED_AT_LAST = 0.5;

  /** A sound that the guitar cannot make, in no slot of its own. */
  static final double NOT_PLAYED = 2;

  /** Leaving out some steps before a round's bottom note, which may be a fresh start as well. */
  static final double OR_FROM_THE_BOTTOM = 1;

  /** Breaking off and starting again from the bottom, with no pause. */
  static final double RESTART = 6.0;

  /** The same after a pause. */
  static final double RESTART_AFTER_PAUSE = 1.5;

  /** Going back some notes within the run and playing them again. */
  static final double GO_BACK = 7.0;

  /** Each note played again after going back. */
  static final double AGAIN = 0.3;

  /** A note at any time between two slots. */
  static final double BETWEEN_SLOTS = 0.6;

  /** The most that coming early can cost: less than any slip, so that time only breaks ties. */
  static final double EARLY_MOST = 2.8;

  /** The most that coming late can cost: players stop to think. */
  static final double LATE_MOST = 0.4;

  private static final double SLOT_SPREAD = 0.2;

  private Costs() {}

  /** Cost of leaving out {@code count} steps, 0 for none. */
  static double skip(int count) {
    return switch (count) {
      case 0 -> 0;
      case 1 -> SKIP;
      default -> SKIP + SKIP_SECOND + SKIP_MORE * (count - 2);
    };
  }

  /**
   * Cost of a note's time as one in a slot.
   *
   * @param intervals time since the last note in a slot, in the player's own time from note to note
   * @param skipped steps left out: the player may leave their time silent, or not
   */
  static double slot(double intervals, int skipped) {
    double off = Math.min(Math.abs(intervals - 1), Math.abs(intervals - 1 - skipped)) / SLOT_SPREAD;
    return Math.min(intervals < 1 ? EARLY_MOST : LATE_MOST, 0.5 * off * off);
  }
}
