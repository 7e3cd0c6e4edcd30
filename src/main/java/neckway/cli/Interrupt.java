package neckway.cli;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * Lets a running command end in good order when the player presses Ctrl-C or the system asks the
 * program to go: the command is told, writes everything, and the program then ends with the
 * command's own status.
 */
final class Interrupt {
  private static final long PATIENCE_SECONDS = 20;
  private static final CountDownLatch WRITTEN = new CountDownLatch(1);
  private static volatile int status;

  private volatile boolean asked;
  private final Thread hook = new Thread(this::wind, "interrupt");

  private Interrupt() {}

  /** Begins to watch. */
  static Interrupt watch() {
    Interrupt interrupt = new Interrupt();
    Runtime.getRuntime().addShutdownHook(interrupt.hook);
    return interrupt;
  }

  private void wind() {
    asked = true;
    try {
      if (WRITTEN.await(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
        Runtime.getRuntime().halt(status);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Whether the command shall end. */
  boolean asked() {
    return asked;
  }

  /** Watches no longer: what is asked from now on ends the program at once. */
  void unwatch() {
    if (asked) {
      return;
    }
    try {
      Runtime.getRuntime().removeShutdownHook(hook);
    } catch (IllegalStateException e) {
      asked = true;
    }
  }

  /** Says that the whole command is over and everything is written. */
  static void finished(int commandStatus) {
    status = commandStatus;
    WRITTEN.countDown();
  }
}
