package neckway.sound;

import java.util.concurrent.locks.LockSupport;
import javax.sound.sampled.SourceDataLine;

/** Plays a piece of sound, once or over and over, in a thread of its own. */
public final class ClipPlayback implements AutoCloseable {
  private static final int BLOCK_FRAMES = 512;
  private static final long BACK_OFF_NANOS = 2_000_000;

  private final SourceDataLine line;
  private final Clip clip;
  private final Runnable ended;
  private final Thread thread;
  private final Alive alive =
      new Alive(Playback.GONE_AFTER_SECONDS, 2 * Playback.GONE_AFTER_SECONDS);
  private final int bufferFrames;
  private volatile boolean running = true;
  private volatile long written;

  /**
   * Begins at once.
   *
   * @param line open at the clip's rate, 16-bit little-endian, not started
   * @param ended told in the player's thread when it is over, stopped or not
   */
  public ClipPlayback(SourceDataLine line, Clip clip, Runnable ended) {
    this.line = line;
    this.clip = clip;
    this.ended = ended;
    bufferFrames = line.getBufferSize() / line.getFormat().getFrameSize();
    thread = new Thread(this::run, "player");
    thread.setDaemon(true);
    alive.start(System.nanoTime());
    thread.start();
  }

  private void run() {
    int frameBytes = line.getFormat().getFrameSize();
    float[] block = new float[BLOCK_FRAMES];
    byte[] bytes = new byte[BLOCK_FRAMES * frameBytes];
    try {
      line.start();
      long at = 0;
      while (running && more(at) && !gone()) {
        clip.fill(at, block);
        Pcm.encode(block, bytes, frameBytes);
        at += write(bytes, frameBytes);
      }
      if (running && !gone()) {
        line.drain();
      } else {
        fadeOut(at, block, bytes, frameBytes);
      }
    } finally {
      running = false;
      ended.run();
      Lines.closeWithoutWaiting(line, new Thread(() -> {}, "nobody"));
    }
  }

  private boolean more(long at) {
    return clip.frames() > 0 && (clip.loop() || at < clip.frames());
  }

  /** Turns down what would come next, and waits until it was heard. */
  private void fadeOut(long from, float[] block, byte[] bytes, int frameBytes) {
    double rate = line.getFormat().getSampleRate();
    FadeOut fade = new FadeOut(rate);
    for (long frame = from; !fade.isOver() && !gone(); frame += BLOCK_FRAMES) {
      clip.fill(frame, block);
      fade.turnDown(block);
      Pcm.encode(block, bytes, frameBytes);
      write(bytes, frameBytes);
    }
    if (!gone()) {
      LockSupport.parkNanos((long) (1e9 * bufferFrames / rate));
    }
  }

  /** Writes a whole block, piece by piece where the line takes less; gives the block's frames. */
  private int write(byte[] bytes, int frameBytes) {
    int at = 0;
    while (at < bytes.length && !gone()) {
      int took = Math.max(0, line.write(bytes, at, bytes.length - at));
      at += took;
      written = written + took / frameBytes;
      if (took == 0) {
        LockSupport.parkNanos(BACK_OFF_NANOS);
      }
    }
    return bytes.length / frameBytes;
  }

  /** How many frames have been heard, about: those that the line took, less its buffer. */
  public long framesHeard() {
    return Math.max(0, written - bufferFrames);
  }

  private boolean gone() {
    return alive.gone(written, System.nanoTime());
  }

  /** Fades out and stops soon; waits for nothing. */
  @Override
  public void close() {
    running = false;
  }
}
