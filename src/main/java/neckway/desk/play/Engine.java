package neckway.desk.play;

import neckway.live.LiveRun;
import neckway.live.LiveRunListener;
import neckway.live.LiveSetup;

/** What runs live, so that a test can run something else. */
@FunctionalInterface
public interface Engine {
  /**
   * Begins a run and comes back at once.
   *
   * @return what stops it in good order
   */
  Runnable start(LiveSetup setup, LiveRunListener listener);

  /** The devices of this machine. */
  static Engine devices() {
    return (setup, listener) -> LiveRun.start(setup, listener)::stop;
  }
}
