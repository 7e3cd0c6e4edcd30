package neckway.hear;

import neckway.hear.signal.FrontEnd;
import neckway.hear.signal.SoundEnergy;
import neckway.hear.signal.SoundLevels;

/**
 * Whether what started has died away at once, as a click does. A note that is struck hard may lose
 * as much of its first milliseconds, but then it holds. Numbers set on development takes with
 * clicks and with hard picking (docs/decisions/ear.md).
 */
final class Decay {
  /** Stretches that are held against each other. */
  private static final double SPAN_SECONDS = 0.006;

  /** Left out after the onset, which is known to a millisecond or so. */
  private static final double LEAD_SECONDS = 0.001;

  /** A sound is at least this many times the energy of the quiet. */
  private static final double OVER_QUIET = 2;

  /** With this share of its first energy a sound has not died away: 8 dB down. */
  private static final double ALIVE_SHARE = 0.15;

  /** What is left of its first energy, at least, in a note struck hard: 25 dB down. */
  private static final double LEAST_SHARE = 0.003;

  /** A note loses less of its energy than this in {@value #HOLD_SECONDS} s; a click more. */
  private static final double HELD_SHARE = 0.6;

  private static final double HOLD_SECONDS = 0.012;

  private final FrontEnd front;
  private final SoundLevels levels;

  Decay(FrontEnd front, SoundLevels levels) {
    this.front = front;
    this.levels = levels;
  }

  /**
   * @param onset frame at which it started
   * @param end frame after the newest sample
   * @param mayHold whether it is clear enough to be a note struck hard
   */
  boolean diedAway(long onset, long end, boolean mayHold) {
    int span = (int) (SPAN_SECONDS * front.rateHz);
    int head = front.index(onset) + (int) (LEAD_SECONDS * front.rateHz);
    int last = front.index(end) - span;
    double quiet = levels.noise() * span;
    double now = SoundEnergy.of(front.x, last, last + span) - quiet;
    if (now < OVER_QUIET * quiet) {
      return true;
    }
    double struck = SoundEnergy.of(front.x, head, head + span) - quiet;
    if (now >= ALIVE_SHARE * struck) {
      return false;
    }
    int earlier = last - (int) (HOLD_SECONDS * front.rateHz);
    return !mayHold
        || now < LEAST_SHARE * struck
        || earlier < head + span
        || now < HELD_SHARE * (SoundEnergy.of(front.x, earlier, earlier + span) - quiet);
  }
}
