package neckway.live;

import java.util.concurrent.locks.LockSupport;
import neckway.file.sound.WavWriter;

/**
 * Has a growing take put on the disk over and over, in a thread that nobody waits for: a disk may
 * take a second to answer, and the ear must not.
 */
final class Safekeeping implements AutoCloseable {
  private static final long PAUSE_NANOS = 300_000_000;

  private final WavWriter writer;
  private volatile boolean running = true;

  Safekeeping(WavWriter writer) {
    this.writer = writer;
    Thread thread = new Thread(this::run, "safekeeping");
    thread.setDaemon(true);
    thread.start();
  }

  private void run() {
    while (running && writer.force()) {
      LockSupport.parkNanos(PAUSE_NANOS);
    }
  }

  @Override
  public void close() {
    running = false;
  }
}
