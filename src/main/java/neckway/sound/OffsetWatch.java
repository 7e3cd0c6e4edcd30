package neckway.sound;

import java.util.OptionalDouble;

/**
 * Reads both devices' positions a few hundred times a second, in a thread of its own that nobody
 * waits for: a line whose server has died may never answer. What was read until then stays.
 */
public final class OffsetWatch implements AutoCloseable {
  private static final long EVERY_MILLIS = 5;

  private final Capture in;
  private final Playback out;
  private final OffsetMeter meter = new OffsetMeter();
  private final Thread thread;
  private volatile boolean running;

  /** Watches two devices that run. */
  public OffsetWatch(Capture in, Playback out) {
    this.in = in;
    this.out = out;
    thread = new Thread(this::run, "positions");
    thread.setDaemon(true);
  }

  /** Begins, where it has not begun. */
  public void start() {
    if (!running) {
      running = true;
      thread.start();
    }
  }

  private void run() {
    while (running) {
      long before = out.position();
      long captured = in.position();
      long after = out.position();
      if (running) {
        synchronized (meter) {
          meter.add(captured - (before + after) / 2.0);
        }
      }
      try {
        Thread.sleep(EVERY_MILLIS);
      } catch (InterruptedException e) {
        return;
      }
    }
  }

  /** The offset in frames; empty before there are enough readings. Answers at once. */
  public OptionalDouble offsetFrames() {
    synchronized (meter) {
      return meter.offsetFrames();
    }
  }

  /** Takes no more readings. */
  @Override
  public void close() {
    running = false;
  }
}
