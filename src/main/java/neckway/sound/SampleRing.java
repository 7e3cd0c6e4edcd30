package neckway.sound;

import javax.sound.sampled.AudioFormat;

/**
 * Bytes between the thread that captures and the one that listens. One writes, one reads; neither
 * waits for the other. If the reader falls a whole ring behind, what was overwritten is counted.
 */
final class SampleRing {
  private final byte[] ring;
  private final int frameBytes;
  private final int channels;

  /** Bytes written since the start; its write makes the bytes before it seen. */
  private volatile long written;

  private long taken;
  private long lostFrames;

  /**
   * @param format 16-bit signed, little-endian
   * @param frames room
   * @param blockFrames most frames written at once; divides the room
   */
  SampleRing(AudioFormat format, int frames, int blockFrames) {
    if (format.getSampleSizeInBits() != 16 || format.isBigEndian() || frames % blockFrames != 0) {
      throw new IllegalArgumentException(format + ", " + frames + " frames");
    }
    channels = format.getChannels();
    frameBytes = 2 * channels;
    ring = new byte[frames * frameBytes];
    blockBytes = blockFrames * frameBytes;
  }

  private final int blockBytes;

  /** Where the writer may put bytes; from {@link #writeAt()}, at most {@link #writeRoom()}. */
  byte[] bytes() {
    return ring;
  }

  int writeAt() {
    return (int) (written % ring.length);
  }

  int writeRoom() {
    return Math.min(blockBytes, ring.length - writeAt());
  }

  /** Says that bytes were put. Writer only. */
  void wrote(int bytes) {
    written = written + bytes;
  }

  /** Frames written since the start. */
  long framesWritten() {
    return written / frameBytes;
  }

  /** Frames overwritten before they were read. Reader only. */
  long lostFrames() {
    return lostFrames;
  }

  /**
   * Takes what is there, at most as much as fits; channels are averaged. Reader only.
   *
   * @return samples, 0 where nothing is there
   */
  int read(float[] samples) {
    long end = written;
    if (end - taken > ring.length - blockBytes) {
      long from = end - ring.length / 2;
      from -= from % frameBytes;
      lostFrames += (from - taken) / frameBytes;
      taken = from;
    }
    int count = (int) Math.min(samples.length, (end - taken) / frameBytes);
    int at = (int) (taken % ring.length);
    for (int i = 0; i < count; i++) {
      int sum = 0;
      for (int c = 0; c < channels; c++) {
        sum += (short) (ring[at] & 0xff | ring[at + 1] << 8);
        at += 2;
      }
      at = at == ring.length ? 0 : at;
      samples[i] = sum / channels / 32768f;
    }
    taken += (long) count * frameBytes;
    return count;
  }
}
