package neckway.file.sound;

import java.io.IOException;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.util.OptionalLong;
import neckway.neck.BadInput;
import neckway.words.Wording;

/**
 * Reads the head of a WAV file: RIFF, RIFX (big-endian) and RF64 (sizes over 4 GB).
 *
 * <p>The JDK's own reader is not used: it knows no RF64, and it gives a file that is cut short, or
 * whose sizes were never filled in, without a word.
 *
 * <p>Source: Microsoft, "Multiple channel audio data and WAVE files"; EBU Tech 3306 (RF64).
 */
final class WavHeader {
  private static final int PCM = 1;
  private static final int FLOAT = 3;
  private static final int A_LAW = 6;
  private static final int MU_LAW = 7;
  private static final int EXTENSIBLE = 0xfffe;

  /** A size that a program writing to a pipe leaves in the head, for want of the true one. */
  private static final long UNFILLED = 0x7fff_0000L;

  private final Path path;
  private final HeaderBytes head;
  private final ByteOrder order;
  private int format;
  private int channels;
  private int sampleRate;
  private int sampleBytes;
  private boolean formatSeen;
  private OptionalLong dataBytes64 = OptionalLong.empty();

  private WavHeader(Path path, HeaderBytes head, boolean bigEndian) {
    this.path = path;
    this.head = head;
    this.order = bigEndian ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN;
  }

  static PcmLayout read(Path path, boolean bigEndian) throws IOException {
    try (HeaderBytes head = new HeaderBytes(path, bigEndian)) {
      return new WavHeader(path, head, bigEndian).layout();
    }
  }

  private PcmLayout layout() throws IOException {
    head.seek(4);
    long riffBytes = head.u32();
    head.seek(12);
    while (true) {
      String name = head.name();
      long size = head.u32();
      long body = head.position();
      switch (name) {
        case "ds64" -> readSizes();
        case "fmt " -> readFormat(size);
        case "data" -> {
          return data(size, riffBytes, body);
        }
        default -> {
          // lists, cues, notes: nothing that is needed here
        }
      }
      head.seek(body + size + (size & 1));
    }
  }

  private void readSizes() throws IOException {
    head.i64();
    dataBytes64 = OptionalLong.of(head.i64());
  }

  private void readFormat(long size) throws IOException {
    format = head.u16();
    channels = head.u16();
    sampleRate = (int) Math.min(Integer.MAX_VALUE, head.u32());
    head.u32();
    int frameBytes = head.u16();
    int bits = head.u16();
    if (format == EXTENSIBLE && size >= 26) {
      head.bytes(8);
      format = head.u16();
    }
    boolean whole = channels > 0 && frameBytes % channels == 0 && frameBytes / channels * 8 >= bits;
    sampleBytes = whole && frameBytes > 0 ? frameBytes / channels : (bits + 7) / 8;
    formatSeen = true;
  }

  private PcmLayout data(long size, long riffBytes, long body) throws IOException {
    if (!formatSeen) {
      throw new BadInput(Wording.of("files.wav.noFormat", path));
    }
    long present = head.length() - body;
    boolean unfilled = size >= UNFILLED && size > present || size == 0 && riffBytes == 0;
    OptionalLong promised = OptionalLong.of(size);
    if (dataBytes64.isPresent() && size == 0xffff_ffffL) {
      promised = dataBytes64;
    } else if (unfilled) {
      promised = OptionalLong.empty();
    }
    return new PcmLayout(sampleRate, channels, coding(), order, body, promised);
  }

  private PcmCoding coding() {
    PcmCoding coding =
        switch (format) {
          case PCM ->
              switch (sampleBytes) {
                case 1 -> PcmCoding.UNSIGNED_8;
                case 2 -> PcmCoding.SIGNED_16;
                case 3 -> PcmCoding.SIGNED_24;
                case 4 -> PcmCoding.SIGNED_32;
                default -> null;
              };
          case FLOAT ->
              switch (sampleBytes) {
                case 4 -> PcmCoding.FLOAT_32;
                case 8 -> PcmCoding.FLOAT_64;
                default -> null;
              };
          case A_LAW -> PcmCoding.A_LAW;
          case MU_LAW -> PcmCoding.MU_LAW;
          default -> null;
        };
    if (coding == null) {
      throw new BadInput(Wording.of("files.wav.coding", path, codecName()));
    }
    return coding;
  }

  private String codecName() {
    return switch (format) {
      case PCM -> Wording.of("files.coding.pcm", 8 * sampleBytes);
      case FLOAT -> Wording.of("files.coding.float", 8 * sampleBytes);
      case 0x02 -> Wording.of("files.coding.named", "Microsoft ADPCM", format);
      case 0x11 -> Wording.of("files.coding.named", "IMA ADPCM", format);
      case 0x31 -> Wording.of("files.coding.named", "GSM 6.10", format);
      case 0x50, 0x55 -> Wording.of("files.coding.named", "MPEG", format);
      default -> Wording.of("files.coding.number", format);
    };
  }
}
