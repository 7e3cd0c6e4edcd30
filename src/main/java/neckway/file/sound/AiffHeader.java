package neckway.file.sound;

import java.io.IOException;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.util.OptionalLong;
import neckway.neck.BadInput;
import neckway.words.Wording;

/**
 * Reads the head of an AIFF or AIFF-C file.
 *
 * <p>Source: Apple, "Audio Interchange File Format: AIFF", version 1.3, and "AIFF-C", 1991 draft.
 */
final class AiffHeader {
  private final Path path;
  private final HeaderBytes head;
  private int channels;
  private long frames;
  private int bits;
  private double sampleRate;
  private String compression = "NONE";
  private boolean commonSeen;
  private long soundOffset;
  private boolean soundSeen;

  private AiffHeader(Path path, HeaderBytes head) {
    this.path = path;
    this.head = head;
  }

  static PcmLayout read(Path path) throws IOException {
    try (HeaderBytes head = new HeaderBytes(path, true)) {
      return new AiffHeader(path, head).layout();
    }
  }

  private PcmLayout layout() throws IOException {
    head.seek(8);
    boolean aifc = head.name().equals("AIFC");
    while (!(commonSeen && soundSeen)) {
      String name = head.name();
      long size = head.u32();
      long body = head.position();
      if (name.equals("COMM")) {
        readCommon(aifc);
      } else if (name.equals("SSND")) {
        soundOffset = body + 8 + head.u32();
        soundSeen = true;
      }
      head.seek(body + size + (size & 1));
    }
    PcmCoding coding = coding();
    ByteOrder order = compression.equals("sowt") ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN;
    OptionalLong promised =
        frames == 0xffff_ffffL
            ? OptionalLong.empty()
            : OptionalLong.of(frames * channels * coding.bytes());
    int rate = (int) Math.round(Math.min(sampleRate, Integer.MAX_VALUE));
    return new PcmLayout(rate, channels, coding, order, soundOffset, promised);
  }

  private void readCommon(boolean aifc) throws IOException {
    channels = head.u16();
    frames = head.u32();
    bits = head.u16();
    sampleRate = head.extended();
    if (aifc) {
      compression = head.name();
    }
    commonSeen = true;
  }

  private PcmCoding coding() {
    PcmCoding coding =
        switch (compression) {
          case "NONE", "twos", "sowt", "in24", "in32" ->
              switch ((bits + 7) / 8) {
                case 1 -> PcmCoding.SIGNED_8;
                case 2 -> PcmCoding.SIGNED_16;
                case 3 -> PcmCoding.SIGNED_24;
                case 4 -> PcmCoding.SIGNED_32;
                default -> null;
              };
          case "raw " -> bits <= 8 ? PcmCoding.UNSIGNED_8 : null;
          case "fl32", "FL32" -> PcmCoding.FLOAT_32;
          case "fl64", "FL64" -> PcmCoding.FLOAT_64;
          case "ulaw", "ULAW" -> PcmCoding.MU_LAW;
          case "alaw", "ALAW" -> PcmCoding.A_LAW;
          default -> null;
        };
    if (coding == null) {
      throw new BadInput(Wording.of("files.aiff.coding", path, compression.strip(), bits));
    }
    return coding;
  }
}
