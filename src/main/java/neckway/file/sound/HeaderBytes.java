package neckway.file.sound;

import java.io.Closeable;
import java.io.EOFException;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;

/** The numbers and names in the head of a sound file. */
final class HeaderBytes implements Closeable {
  private final RandomAccessFile file;
  private final boolean bigEndian;

  HeaderBytes(Path path, boolean bigEndian) throws IOException {
    this.file = new RandomAccessFile(path.toFile(), "r");
    this.bigEndian = bigEndian;
  }

  long position() throws IOException {
    return file.getFilePointer();
  }

  long length() throws IOException {
    return file.length();
  }

  void seek(long position) throws IOException {
    file.seek(position);
  }

  /** A four-letter name. */
  String name() throws IOException {
    return new String(bytes(4), StandardCharsets.ISO_8859_1);
  }

  int u16() throws IOException {
    return (int) number(2);
  }

  long u32() throws IOException {
    return number(4);
  }

  long i64() throws IOException {
    return number(8);
  }

  /** An 80-bit IEEE 754 extended number, as AIFF writes its sample rate; 0 where not finite. */
  double extended() throws IOException {
    int exponent = u16() & 0x7fff;
    double mantissa = Math.scalb((double) u32(), 32) + u32();
    return exponent == 0x7fff ? 0 : Math.scalb(mantissa, exponent - 16383 - 63);
  }

  private long number(int count) throws IOException {
    byte[] bytes = bytes(count);
    long value = 0;
    for (int i = 0; i < count; i++) {
      value = value << 8 | bytes[bigEndian ? i : count - 1 - i] & 0xff;
    }
    return value;
  }

  /**
   * The next bytes.
   *
   * @throws EOFException where the file ends before them
   */
  byte[] bytes(int count) throws IOException {
    byte[] bytes = new byte[count];
    file.readFully(bytes);
    return bytes;
  }

  @Override
  public void close() throws IOException {
    file.close();
  }
}
