package neckway.live;

/** Told what happens in a run of rounds, on the run's own thread. */
public interface LiveRunListener extends LiveListener {
  /** The devices run, and a round's count-in is to come. */
  default void roundBegins(int round) {}

  /** A round is over and its take is in its place. */
  default void roundEnded(LiveResult result) {}

  /** Nothing follows: all devices are given back. Told once, whatever happened. */
  default void over() {}
}
