package neckway.desk.play;

import java.util.Optional;
import java.util.function.Consumer;

/** Listens to the input before a run. */
public interface SoundCheck {
  /**
   * What is known of the input.
   *
   * @param level what the meter shows, 0 to 1
   * @param line what is off and how to mend it, in one line; empty where nothing is
   */
  record Report(float level, String line) {}

  /**
   * Begins to listen; tells reports on a thread of its own.
   *
   * @param input name of the input; empty: the first
   */
  void start(Optional<String> input, Consumer<Report> reports);

  /**
   * Ends it, where it runs.
   *
   * @param then done once the device is given back, on any thread
   */
  void stop(Runnable then);
}
