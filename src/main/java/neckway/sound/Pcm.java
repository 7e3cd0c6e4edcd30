package neckway.sound;

/** Sound as lines take it: 16 bit, little-endian, the same in all channels. */
final class Pcm {
  private static final int MOST = 32_767;
  private static final int SAMPLE_BYTES = 2;

  private Pcm() {}

  /**
   * Writes a block over bytes.
   *
   * @param block -1 to 1
   * @param bytes as many frames
   * @param frameBytes two for each channel
   */
  static void encode(float[] block, byte[] bytes, int frameBytes) {
    int at = 0;
    for (float sample : block) {
      int value = Math.round(sample * MOST);
      for (int c = 0; c < frameBytes; c += SAMPLE_BYTES) {
        bytes[at++] = (byte) value;
        bytes[at++] = (byte) (value >> 8);
      }
    }
  }
}
