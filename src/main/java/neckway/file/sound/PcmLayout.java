package neckway.file.sound;

import java.nio.ByteOrder;
import java.util.OptionalLong;

/**
 * Where the samples of an uncompressed file lie and how they are written.
 *
 * @param sampleRate frames a second
 * @param channels 1 or more
 * @param coding how one sample is written
 * @param order byte order
 * @param dataOffset bytes before the first sample
 * @param promisedBytes bytes of sound that the header promises; empty where it leaves that open
 */
record PcmLayout(
    int sampleRate,
    int channels,
    PcmCoding coding,
    ByteOrder order,
    long dataOffset,
    OptionalLong promisedBytes) {

  /** More than any file is read with; what a header says beyond it is refused later. */
  private static final int MOST_CHANNELS = 1 << 16;

  /**
   * Bytes of one sample of every channel; of one channel at least, so that no header divides by
   * zero, and of so many at most that none claims the memory.
   */
  int frameBytes() {
    return Math.max(1, Math.min(MOST_CHANNELS, channels)) * coding.bytes();
  }
}
