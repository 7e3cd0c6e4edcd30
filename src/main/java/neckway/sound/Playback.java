package neckway.sound;

import javax.sound.sampled.SourceDataLine;

/**
 * Plays a click track through an output line. Frames are counted from the first one written; the
 * track is placed on that count.
 */
public final class Playback implements AutoCloseable {
  private static final int BLOCK_FRAMES = 256;

  private final SourceDataLine line;
  private final ClickTrack track;
  private final Thread thread;
  private volatile boolean running;
  private volatile long underruns;

  /**
   * @param line open, 16-bit little-endian, not started
   */
  public Playback(SourceDataLine line, ClickTrack track) {
    this.line = line;
    this.track = track;
    thread = new Thread(this::run, "playback");
    thread.setDaemon(true);
    thread.setPriority(Thread.MAX_PRIORITY);
  }

  /** Begins to play. */
  public void start() {
    running = true;
    thread.start();
  }

  private void run() {
    int channels = line.getFormat().getChannels();
    float[] block = new float[BLOCK_FRAMES];
    byte[] bytes = new byte[BLOCK_FRAMES * 2 * channels];
    int bufferBytes = line.getBufferSize();
    line.start();
    for (long frame = 0; running; frame += BLOCK_FRAMES) {
      track.fill(frame, block);
      int at = 0;
      for (float sample : block) {
        int value = Math.round(sample * 32767);
        for (int c = 0; c < channels; c++) {
          bytes[at++] = (byte) value;
          bytes[at++] = (byte) (value >> 8);
        }
      }
      if (frame > bufferBytes && line.available() >= bufferBytes) {
        underruns = underruns + 1;
      }
      line.write(bytes, 0, bytes.length);
    }
  }

  /** The line's buffer as it was given, frames. */
  public int bufferFrames() {
    return line.getBufferSize() / line.getFormat().getFrameSize();
  }

  /** How often the output ran dry, so that the clicks after it came late. */
  public long underruns() {
    return underruns;
  }

  /** The line's own count of frames played. */
  long position() {
    return line.getLongFramePosition();
  }

  /** Stops at once. */
  @Override
  public void close() {
    running = false;
    line.flush();
    Lines.closeWithoutWaiting(line, thread);
  }
}
