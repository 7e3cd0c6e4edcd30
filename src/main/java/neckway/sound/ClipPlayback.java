package neckway.sound;

import javax.sound.sampled.SourceDataLine;

/** Plays a piece of sound, once or over and over, in a thread of its own. */
public final class ClipPlayback implements AutoCloseable {
  /** No sample is played louder than this share of full scale. */
  static final float MOST = 0.7f;

  private static final int BLOCK_FRAMES = 512;

  private final SourceDataLine line;
  private final float[] sound;
  private final boolean loop;
  private final Runnable ended;
  private final Thread thread;
  private final Alive alive =
      new Alive(Playback.GONE_AFTER_SECONDS, 2 * Playback.GONE_AFTER_SECONDS);
  private volatile boolean running = true;
  private volatile long written;

  /**
   * Begins at once.
   *
   * @param line open, 16-bit little-endian, not started
   * @param sound mono at the line's rate
   * @param ended told in the player's thread when it is over, stopped or not
   */
  public ClipPlayback(SourceDataLine line, float[] sound, boolean loop, Runnable ended) {
    this.line = line;
    this.sound = sound;
    this.loop = loop;
    this.ended = ended;
    thread = new Thread(this::run, "player");
    thread.setDaemon(true);
    alive.start(System.nanoTime());
    thread.start();
  }

  private void run() {
    int channels = line.getFormat().getChannels();
    byte[] bytes = new byte[BLOCK_FRAMES * 2 * channels];
    try {
      line.start();
      int at = 0;
      while (running && sound.length > 0 && !gone()) {
        int frames = Math.min(BLOCK_FRAMES, sound.length - at);
        fill(bytes, at, frames, channels);
        int took = line.write(bytes, 0, frames * 2 * channels) / (2 * channels);
        written = written + Math.max(0, took);
        at += Math.max(0, took);
        if (at >= sound.length) {
          if (!loop) {
            break;
          }
          at = 0;
        }
      }
      if (running && !gone()) {
        line.drain();
      }
    } finally {
      running = false;
      ended.run();
      Lines.closeWithoutWaiting(line, new Thread(() -> {}, "nobody"));
    }
  }

  private void fill(byte[] bytes, int from, int frames, int channels) {
    int at = 0;
    for (int i = from; i < from + frames; i++) {
      int value = Math.round(Math.max(-MOST, Math.min(MOST, sound[i])) * 32767);
      for (int c = 0; c < channels; c++) {
        bytes[at++] = (byte) value;
        bytes[at++] = (byte) (value >> 8);
      }
    }
  }

  private boolean gone() {
    return alive.gone(written, System.nanoTime());
  }

  /** Stops soon; waits for nothing. */
  @Override
  public void close() {
    running = false;
  }
}
