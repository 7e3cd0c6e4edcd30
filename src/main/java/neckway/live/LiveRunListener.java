package neckway.live;

import neckway.review.Grid;
import neckway.run.RunListener;

/**
 * Told what happens in a live run as it happens, on the run's own thread: it must not wait for
 * anything.
 */
public interface LiveRunListener extends RunListener {
  /** The devices run, and a round's count-in or first note is to come. */
  default void roundBegins(int round) {}

  /** The first beat's time is known; verdicts follow. */
  default void begun(Grid grid) {}

  /**
   * A click has just been reached.
   *
   * @param beat 0 is the first note's; those of the count-in are negative, -1 the last of them
   */
  default void beat(long beat) {}

  /**
   * Sound came in.
   *
   * @param seconds of the take so far
   * @param peak highest sample since the last call, 0 to 1
   */
  default void sound(double seconds, float peak) {}

  /** One line that the player should know; the run goes on or ends in good order. */
  default void complaint(String line) {}

  /** A round is over and its take is in its place. */
  default void roundEnded(LiveResult result) {}

  /** Nothing follows: all devices are given back. Told once, whatever happened. */
  default void over() {}
}
