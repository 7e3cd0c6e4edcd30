package neckway.file.sound;

import java.nio.ByteBuffer;
import java.nio.file.Path;
import neckway.neck.BadInput;
import neckway.words.Wording;

/**
 * The setting of an AAC decoder (AudioSpecificConfig). Source: ISO/IEC 14496-3, 1.6.2.1 and table
 * 1.18 (sampling frequencies).
 *
 * @param bytes as they stand in the file
 * @param sampleRate frames a second
 * @param channels 1 to 6, or 8
 */
record AacConfig(byte[] bytes, int sampleRate, int channels) {
  private static final int LOW_COMPLEXITY = 2;
  private static final int SPECTRAL_BAND_REPLICATION = 5;
  private static final int PARAMETRIC_STEREO = 29;
  private static final int SBR_SYNC = 0x2b7;
  private static final int[] RATES = {
    96_000, 88_200, 64_000, 48_000, 44_100, 32_000, 24_000, 22_050, 16_000, 12_000, 11_025, 8_000
  };
  private static final int OWN_RATE = 15;

  /**
   * Reads the setting.
   *
   * @throws BadInput for a kind of AAC that cannot be read
   * @throws java.nio.BufferUnderflowException where it is cut short
   */
  static AacConfig read(Path path, byte[] bytes) {
    Bits bits = new Bits(ByteBuffer.wrap(bytes));
    int kind = bits.next(5);
    if (kind == SPECTRAL_BAND_REPLICATION || kind == PARAMETRIC_STEREO) {
      throw SoundFiles.unreadable(path, "HE-AAC");
    }
    if (kind != LOW_COMPLEXITY) {
      throw SoundFiles.unreadable(path, Wording.of("files.coding.aacKind", kind));
    }
    int rateIndex = bits.next(4);
    int rate =
        rateIndex == OWN_RATE ? bits.next(24) : rateIndex < RATES.length ? RATES[rateIndex] : 0;
    int layout = bits.next(4);
    if (layout == 0 || layout > 7) {
      throw SoundFiles.unreadable(path, Wording.of("files.coding.aacLayout"));
    }
    boolean shortFrames = bits.next(1) == 1;
    if (shortFrames) {
      throw SoundFiles.unreadable(path, Wording.of("files.coding.aacShort"));
    }
    bits.next(2);
    if (bits.left() >= 17
        && bits.next(11) == SBR_SYNC
        && bits.next(5) == SPECTRAL_BAND_REPLICATION
        && bits.next(1) == 1) {
      throw SoundFiles.unreadable(path, "HE-AAC");
    }
    return new AacConfig(bytes, rate, layout == 7 ? 8 : layout);
  }

  /** The bits of a buffer, the highest of each byte first. */
  private static final class Bits {
    private final ByteBuffer bytes;
    private int current;
    private int held;

    Bits(ByteBuffer bytes) {
      this.bytes = bytes;
    }

    int left() {
      return 8 * bytes.remaining() + held;
    }

    int next(int count) {
      int value = 0;
      for (int i = 0; i < count; i++) {
        if (held == 0) {
          current = bytes.get();
          held = 8;
        }
        held--;
        value = value << 1 | current >> held & 1;
      }
      return value;
    }
  }
}
