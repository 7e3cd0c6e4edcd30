package neckway;

import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;

/** Waits for something to become so; the limit is only how long a busy machine may take. */
public final class Await {
  private static final long POLL_MILLIS = 20;

  /** How often a condition must hold, one look after the other, to be called steady. */
  private static final int STEADY_LOOKS = 5;

  private static final long STEADY_POLL_MILLIS = 50;

  private Await() {}

  /**
   * Waits until a condition holds.
   *
   * @param what the condition in words, for the failure
   * @param seconds longest wait
   * @throws AssertionError if it does not hold by then
   */
  public static void until(String what, double seconds, Callable<Boolean> condition)
      throws Exception {
    until(what, seconds, condition, () -> "");
  }

  /**
   * Waits until a condition holds.
   *
   * @param what the condition in words, for the failure
   * @param seconds longest wait
   * @param found what there is instead, asked for only when the wait was in vain
   * @throws AssertionError if it does not hold by then
   */
  public static void until(
      String what, double seconds, Callable<Boolean> condition, Callable<String> found)
      throws Exception {
    if (!within(seconds, condition)) {
      throw new AssertionError(
          "waited %s s in vain until %s; %s".formatted(seconds, what, found.call()));
    }
  }

  /** Waits until a condition holds, and tells whether it did within the time given. */
  public static boolean within(double seconds, Callable<Boolean> condition) throws Exception {
    long begun = System.nanoTime();
    while (!condition.call()) {
      if (passed(begun) > seconds) {
        return false;
      }
      TimeUnit.MILLISECONDS.sleep(POLL_MILLIS);
    }
    return true;
  }

  /**
   * Waits until a condition has held at several looks in a row.
   *
   * @param what the condition in words, for the failure
   * @param seconds longest wait
   * @throws AssertionError if it does not by then
   */
  public static void steadily(String what, double seconds, Callable<Boolean> condition)
      throws Exception {
    long begun = System.nanoTime();
    int held = 0;
    while (held < STEADY_LOOKS) {
      held = condition.call() ? held + 1 : 0;
      if (passed(begun) > seconds) {
        throw new AssertionError("waited %s s in vain until steadily %s".formatted(seconds, what));
      }
      TimeUnit.MILLISECONDS.sleep(STEADY_POLL_MILLIS);
    }
  }

  /** Lets time pass where the time itself is what is tested. */
  public static void pass(double seconds) throws InterruptedException {
    TimeUnit.MICROSECONDS.sleep(Math.round(seconds * TimeUnit.SECONDS.toMicros(1)));
  }

  private static double passed(long begunNanos) {
    return (System.nanoTime() - begunNanos) / 1e9;
  }
}
