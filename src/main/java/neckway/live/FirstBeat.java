package neckway.live;

import java.util.Optional;
import neckway.review.Clock;
import neckway.sound.ClickClock;

/**
 * When the first note of a round is due.
 *
 * @param seconds from the take's first sample
 * @param clock whether the sound's times can be held against it
 * @param source how the click's times are known; empty where nothing clicks
 */
record FirstBeat(double seconds, Clock clock, Optional<ClickClock.Source> source) {
  private static final double STEPS_PER_SECOND = 10_000;

  /** Rounded as a review file has it, so that a review of the saved take has the same. */
  FirstBeat {
    seconds = Math.round(seconds * STEPS_PER_SECOND) / STEPS_PER_SECOND;
  }
}
