package neckway.file.sound;

import java.io.IOException;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.util.OptionalLong;
import neckway.neck.BadInput;
import neckway.words.Wording;

/** Reads the head of an AU file. Source: Sun Microsystems, au(4) manual page. */
final class AuHeader {
  private AuHeader() {}

  static PcmLayout read(Path path) throws IOException {
    try (HeaderBytes head = new HeaderBytes(path, true)) {
      head.seek(4);
      long offset = head.u32();
      long size = head.u32();
      long encoding = head.u32();
      int rate = (int) Math.min(Integer.MAX_VALUE, head.u32());
      int channels = (int) Math.min(Integer.MAX_VALUE, head.u32());
      OptionalLong promised = size == 0xffff_ffffL ? OptionalLong.empty() : OptionalLong.of(size);
      PcmCoding coding = coding(path, encoding);
      return new PcmLayout(rate, channels, coding, ByteOrder.BIG_ENDIAN, offset, promised);
    }
  }

  private static PcmCoding coding(Path path, long encoding) {
    if (encoding == 27) {
      return PcmCoding.A_LAW;
    }
    return switch ((int) Math.min(encoding, 100)) {
      case 1 -> PcmCoding.MU_LAW;
      case 2 -> PcmCoding.SIGNED_8;
      case 3 -> PcmCoding.SIGNED_16;
      case 4 -> PcmCoding.SIGNED_24;
      case 5 -> PcmCoding.SIGNED_32;
      case 6 -> PcmCoding.FLOAT_32;
      case 7 -> PcmCoding.FLOAT_64;
      default -> throw new BadInput(Wording.of("files.au.coding", path, encoding));
    };
  }
}
