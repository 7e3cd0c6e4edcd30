package neckway.sound;

import javax.sound.sampled.DataLine;
import javax.sound.sampled.SourceDataLine;

/** Help with lines of Java Sound. */
final class Lines {
  private static final long PATIENCE_MILLIS = 500;

  private Lines() {}

  /**
   * Closes a line without hanging on one whose server has died: each call to it is made by a thread
   * of its own, which is waited for a little only and does not keep the program from ending.
   *
   * @param user the thread that reads or writes the line and has been told to end
   */
  static void closeWithoutWaiting(DataLine line, Thread user) {
    Thread closer =
        new Thread(
            () -> {
              if (line instanceof SourceDataLine) {
                line.flush();
              }
              join(user);
              line.stop();
              line.close();
            },
            "close line");
    closer.setDaemon(true);
    closer.start();
    join(closer);
  }

  private static void join(Thread thread) {
    join(thread, PATIENCE_MILLIS);
  }

  /** Waits for a thread to end, for so long at most. */
  static void join(Thread thread, long millis) {
    try {
      thread.join(millis);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
