package neckway.sound;

import java.util.concurrent.locks.LockSupport;
import javax.sound.sampled.TargetDataLine;

/**
 * Takes sound from an input line into a ring, and wakes who waits for it. Its thread does nothing
 * else: no locks, no logging, no allocation. Frames are counted from the first one the line gives;
 * that count is the only clock.
 *
 * <p>A device whose server has died keeps saying that it is open and gives nothing for ever, or
 * never comes back from a read, so a watchdog calls it gone when no frame has come for {@link
 * #GONE_AFTER_SECONDS}.
 */
public final class Capture implements AutoCloseable {
  /** Silence of the line, not of the sound, after which the device is taken for gone. */
  public static final double GONE_AFTER_SECONDS = 2.0;

  /** The same before the first frame, since a device takes a while to wake. */
  static final double NEVER_CAME_SECONDS = 4.0;

  private static final int BLOCK_FRAMES = 256;
  private static final int RING_SECONDS = 30;

  private final TargetDataLine line;
  private final SampleRing ring;
  private final double sampleRate;
  private final int bufferBytes;
  private final Thread thread;
  private volatile boolean running;
  private volatile long overflows;

  /** Who waits for sound, if anyone does. */
  private volatile Thread waiting;

  private final Alive alive = new Alive(GONE_AFTER_SECONDS, NEVER_CAME_SECONDS);

  /**
   * @param line open, not started
   */
  public Capture(TargetDataLine line) {
    this.line = line;
    sampleRate = line.getFormat().getSampleRate();
    bufferBytes = line.getBufferSize();
    int blocks = (int) (RING_SECONDS * sampleRate / BLOCK_FRAMES) + 1;
    ring = new SampleRing(line.getFormat(), blocks * BLOCK_FRAMES, BLOCK_FRAMES);
    thread = new Thread(this::run, "capture");
    thread.setDaemon(true);
    thread.setPriority(Thread.MAX_PRIORITY);
  }

  /** Begins to capture. */
  public void start() {
    running = true;
    alive.start(System.nanoTime());
    thread.start();
  }

  private void run() {
    line.start();
    int frameBytes = line.getFormat().getFrameSize();
    byte[] bytes = ring.bytes();
    FullBuffer full = new FullBuffer(bufferBytes);
    MissedTime missed = new MissedTime(sampleRate);
    while (running) {
      if (line.available() > bufferBytes - frameBytes) {
        full.found();
      }
      int got = line.read(bytes, ring.writeAt(), ring.writeRoom());
      if (got > 0) {
        int dropped = full.ranOver(got);
        if (missed.read(got / frameBytes, System.nanoTime()) > dropped) {
          dropped = 1;
        }
        overflows = overflows + dropped;
        ring.wrote(got);
        LockSupport.unpark(waiting);
      } else {
        LockSupport.parkNanos(2_000_000);
      }
    }
  }

  /** Frames a second. */
  public double sampleRate() {
    return sampleRate;
  }

  /** The line's buffer as it was given, frames. */
  public int bufferFrames() {
    return bufferBytes / line.getFormat().getFrameSize();
  }

  /** Takes what has come, mono, -1 to 1; 0 where nothing has. For one thread. */
  public int read(float[] samples) {
    return ring.read(samples);
  }

  /**
   * The same, but waits for the first sample; for the thread that reads.
   *
   * @param longestNanos most that it waits; 0 samples are returned where nothing came, or where the
   *     thread was interrupted
   */
  int read(float[] samples, long longestNanos) {
    long until = System.nanoTime() + longestNanos;
    waiting = Thread.currentThread();
    int got = ring.read(samples);
    long left = longestNanos;
    while (got == 0 && left > 0 && !Thread.currentThread().isInterrupted()) {
      LockSupport.parkNanos(this, left);
      got = ring.read(samples);
      left = until - System.nanoTime();
    }
    waiting = null;
    return got;
  }

  /** Frames captured so far. */
  public long frames() {
    return ring.framesWritten();
  }

  /**
   * How often the line's buffer was full and sound came after it, or less sound came than time
   * passed, so that some was dropped in between. A line whose device is gone stays full for ever
   * and drops nothing.
   */
  public long overflows() {
    return overflows;
  }

  /** Frames that were captured and overwritten before they were listened to. */
  public long lostFrames() {
    return ring.lostFrames();
  }

  /**
   * The line's own count of frames, for relating it to the output's. It waits for the line's lock,
   * which a line whose server has died may never give back: only for a thread that nobody waits
   * for.
   */
  long position() {
    return line.getLongFramePosition();
  }

  /** Whether the device has stopped giving; by time alone, so it answers at once. */
  public boolean gone() {
    return alive.gone(ring.framesWritten(), System.nanoTime());
  }

  /** Stops. What was captured can still be read. */
  @Override
  public void close() {
    running = false;
    Lines.closeWithoutWaiting(line, thread);
  }
}
