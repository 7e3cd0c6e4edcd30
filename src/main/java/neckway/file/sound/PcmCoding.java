package neckway.file.sound;

import java.nio.ByteBuffer;

/** How one sample is written in a file that is not compressed. */
enum PcmCoding {
  UNSIGNED_8(1) {
    @Override
    float decode(ByteBuffer in) {
      return ((in.get() & 0xff) - 128) / 128f;
    }
  },
  SIGNED_8(1) {
    @Override
    float decode(ByteBuffer in) {
      return in.get() / 128f;
    }
  },
  SIGNED_16(2) {
    @Override
    float decode(ByteBuffer in) {
      return in.getShort() / 32768f;
    }
  },
  SIGNED_24(3) {
    @Override
    float decode(ByteBuffer in) {
      int first = in.get() & 0xff;
      int middle = in.get() & 0xff;
      int last = in.get() & 0xff;
      boolean big = in.order() == java.nio.ByteOrder.BIG_ENDIAN;
      int high = big ? first : last;
      int low = big ? last : first;
      return (high << 24 | middle << 16 | low << 8) / 2147483648f;
    }
  },
  SIGNED_32(4) {
    @Override
    float decode(ByteBuffer in) {
      return in.getInt() / 2147483648f;
    }
  },
  FLOAT_32(4) {
    @Override
    float decode(ByteBuffer in) {
      return in.getFloat();
    }
  },
  FLOAT_64(8) {
    @Override
    float decode(ByteBuffer in) {
      return (float) in.getDouble();
    }
  },
  /** ITU-T G.711 mu-law. */
  MU_LAW(1) {
    @Override
    float decode(ByteBuffer in) {
      int code = ~in.get() & 0xff;
      int size = (((code & 0x0f) << 3) + 132 << (code >> 4 & 7)) - 132;
      return ((code & 0x80) == 0 ? size : -size) / 32768f;
    }
  },
  /** ITU-T G.711 A-law. */
  A_LAW(1) {
    @Override
    float decode(ByteBuffer in) {
      int code = in.get() & 0xff ^ 0x55;
      int exponent = code >> 4 & 7;
      int mantissa = (code & 0x0f) << 4;
      int size = exponent == 0 ? mantissa + 8 : mantissa + 264 << exponent - 1;
      return ((code & 0x80) == 0 ? -size : size) / 32768f;
    }
  };

  private final int bytes;

  PcmCoding(int bytes) {
    this.bytes = bytes;
  }

  /** Bytes a sample. */
  int bytes() {
    return bytes;
  }

  /** Takes the next sample; full scale is -1 to 1. */
  abstract float decode(ByteBuffer in);
}
