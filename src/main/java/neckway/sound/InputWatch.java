package neckway.sound;

import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import neckway.neck.BadInput;

/**
 * An input that is listened to in a thread of its own until it is stopped. A device that goes, or
 * cannot be opened yet, is opened again when it is there.
 */
public final class InputWatch {
  /** Told what comes in, on the listening's own thread. */
  public interface Taker {
    /** A device is open; what comes next is its sound. */
    void opened(double sampleRate);

    /** Sound, mono, -1 to 1; valid up to {@code length} and until this returns. */
    void sound(float[] samples, int length);

    /** The device has stopped giving. */
    void gone();

    /** No device can be opened; one line that says why. */
    void refused(String why);
  }

  private static final long AGAIN_MILLIS = 1_000;

  /** Longer than the sound system is given to answer, and a line to close. */
  private static final long LONGEST_END_MILLIS = 6_000;

  private final Optional<String> input;
  private final Taker taker;
  private final CountDownLatch stopped = new CountDownLatch(1);
  private final Thread thread;

  private InputWatch(Optional<String> input, Taker taker, String name) {
    this.input = input;
    this.taker = taker;
    thread = thread(this::run, name);
  }

  /**
   * Begins.
   *
   * @param input name of the input or a part of it; empty: the first
   * @param name of the thread
   */
  public static InputWatch start(Optional<String> input, Taker taker, String name) {
    InputWatch watch = new InputWatch(input, taker, name);
    watch.thread.start();
    return watch;
  }

  /** Ends it, without waiting; {@code then} follows, on any thread, once the device is free. */
  public void stop(Runnable then) {
    stopped.countDown();
    thread(() -> afterEnd(then), "after " + thread.getName()).start();
  }

  private void afterEnd(Runnable then) {
    try {
      thread.join(LONGEST_END_MILLIS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    then.run();
  }

  private static Thread thread(Runnable work, String name) {
    Thread thread = new Thread(work, name);
    thread.setDaemon(true);
    return thread;
  }

  private boolean isStopped() {
    return stopped.getCount() == 0;
  }

  private void run() {
    while (!isStopped()) {
      try (Capture in = new Capture(Devices.openInput(input))) {
        taker.opened(in.sampleRate());
        in.start();
        Pump.End end = Pump.run(in, this::handOn, this::isStopped);
        if (end == Pump.End.GONE) {
          taker.gone();
        }
      } catch (BadInput e) {
        taker.refused(e.getMessage());
      }
      waitBeforeNextTry();
    }
  }

  private boolean handOn(float[] samples, int length) {
    taker.sound(samples, length);
    return true;
  }

  private void waitBeforeNextTry() {
    try {
      stopped.await(AGAIN_MILLIS, TimeUnit.MILLISECONDS);
    } catch (InterruptedException e) {
      stopped.countDown();
      Thread.currentThread().interrupt();
    }
  }
}
