package neckway.sound;

import java.util.concurrent.locks.LockSupport;
import javax.sound.sampled.SourceDataLine;

/**
 * Plays a click track, or any other sound, through an output line. Frames are counted from the
 * first one written; the sound is placed on that count.
 */
public final class Playback implements AutoCloseable {
  /** Longer than for an input, so that where both are lost at once the input is named. */
  static final double GONE_AFTER_SECONDS = 2.5;

  private static final double NEVER_WENT_SECONDS = 4.5;
  private static final long BACK_OFF_NANOS = 5_000_000;
  private static final int BLOCK_FRAMES = 256;

  private final SourceDataLine line;
  private final PlayedSound sound;
  private final Thread thread;
  private final Alive alive = new Alive(GONE_AFTER_SECONDS, NEVER_WENT_SECONDS);
  private final RateWatch haste;
  private final int frameBytes;
  private final int bufferFrames;
  private volatile boolean running;
  private volatile long underruns;
  private volatile long shortWrites;
  private volatile long framesWritten;
  private volatile boolean swallowed;

  /**
   * @param line open, 16-bit little-endian, not started
   */
  public Playback(SourceDataLine line, PlayedSound sound) {
    this.line = line;
    this.sound = sound;
    frameBytes = line.getFormat().getFrameSize();
    bufferFrames = line.getBufferSize() / frameBytes;
    haste = new RateWatch(line.getFormat().getSampleRate(), bufferFrames);
    thread = new Thread(this::run, "playback");
    thread.setDaemon(true);
    thread.setPriority(Thread.MAX_PRIORITY);
  }

  /** Begins to play. */
  public void start() {
    running = true;
    alive.start(System.nanoTime());
    thread.start();
  }

  private void run() {
    float[] block = new float[BLOCK_FRAMES];
    byte[] bytes = new byte[BLOCK_FRAMES * frameBytes];
    int bufferBytes = bufferFrames * frameBytes;
    line.start();
    haste.start(System.nanoTime());
    long frame = 0;
    for (; running && !swallowed; frame += BLOCK_FRAMES) {
      sound.fill(frame, block);
      Pcm.encode(block, bytes, frameBytes);
      if (frame > bufferFrames && line.available() >= bufferBytes) {
        underruns = underruns + 1;
      }
      write(bytes);
      swallowed = haste.tooFast(framesWritten, System.nanoTime());
    }
    fadeOut(frame, block, bytes);
  }

  /** Turns down what would come next, and waits until it was heard. */
  private void fadeOut(long from, float[] block, byte[] bytes) {
    FadeOut fade = new FadeOut(line.getFormat().getSampleRate());
    for (long frame = from; !fade.isOver() && !gone(); frame += BLOCK_FRAMES) {
      sound.fill(frame, block);
      fade.turnDown(block);
      Pcm.encode(block, bytes, frameBytes);
      write(bytes);
    }
    if (!gone()) {
      LockSupport.parkNanos(bufferNanos());
    }
  }

  private long bufferNanos() {
    return (long) (1e9 * bufferFrames / line.getFormat().getSampleRate());
  }

  /** Writes a whole block: what the line does not take is offered again after a while. */
  private void write(byte[] bytes) {
    int at = 0;
    while (at < bytes.length && (running || !gone())) {
      int took = line.write(bytes, at, bytes.length - at);
      if (took > 0) {
        at += took;
        framesWritten = framesWritten + took / frameBytes;
      }
      if (at < bytes.length) {
        shortWrites = shortWrites + 1;
        LockSupport.parkNanos(BACK_OFF_NANOS);
      }
    }
  }

  /** The line's buffer as it was given, frames. */
  public int bufferFrames() {
    return bufferFrames;
  }

  /** How many frames the line has taken. */
  public long framesWritten() {
    return framesWritten;
  }

  /** How often the output ran dry, so that the clicks after it came late. */
  public long underruns() {
    return underruns;
  }

  /** How often the line took less than it was given, as one does whose device is gone. */
  public long shortWrites() {
    return shortWrites;
  }

  /**
   * Whether the device has stopped playing, or swallows sound faster than it can be played; by time
   * alone, so it answers at once.
   */
  public boolean gone() {
    return swallowed || alive.gone(framesWritten, System.nanoTime());
  }

  /** The line's own count of frames played; to be used as {@link Capture#position()} is. */
  long position() {
    return line.getLongFramePosition();
  }

  /** Fades out and stops; waits for a device that plays no more no longer than for the fading. */
  @Override
  public void close() {
    running = false;
    if (!gone()) {
      Lines.join(thread, 2 * (bufferNanos() / 1_000_000 + (long) (1000 * FadeOut.SECONDS)));
    }
    Lines.closeWithoutWaiting(line, thread);
  }
}
