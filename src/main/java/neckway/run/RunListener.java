package neckway.run;

import neckway.follow.VerdictListener;
import neckway.hand.ShiftSaid;

/** Told what a run says while it goes on: each note's verdict and what became of each shift. */
public interface RunListener extends VerdictListener {
  /**
   * What became of a shift; it will not change. The next attempt may have begun by then.
   *
   * @param attempt in which the shift was planned, from 0
   */
  default void shifted(int attempt, ShiftSaid said) {}
}
