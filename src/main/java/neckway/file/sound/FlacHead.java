package neckway.file.sound;

import java.io.ByteArrayInputStream;
import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;

/**
 * Takes everything but the stream's own figures out of the head of a FLAC file: tags, pictures and
 * tables of seek points are of no use here, and the decoder makes room for whatever length they
 * claim.
 *
 * <p>Source: RFC 9639, "Free Lossless Audio Codec (FLAC)", 8.1 and 8.2.
 */
final class FlacHead {
  private static final int MARKER_BYTES = 4;
  private static final int STREAM_INFO_BYTES = 34;
  private static final int LAST_BLOCK = 0x80;
  private static final int BLOCK_TYPE = 0x7f;
  private static final int STREAM_INFO = 0;

  private FlacHead() {}

  /**
   * The same file with the stream's figures as its only block of metadata.
   *
   * @param in at the start of the file
   * @throws EOFException where the head is cut short
   * @throws IOException where the stream's figures do not come first
   */
  static InputStream withFiguresAlone(InputStream in) throws IOException {
    DataInputStream data = new DataInputStream(in);
    byte[] head = new byte[MARKER_BYTES + 4 + STREAM_INFO_BYTES];
    data.readFully(head);
    int first = head[MARKER_BYTES] & 0xff;
    int length = size(head, MARKER_BYTES + 1);
    if ((first & BLOCK_TYPE) != STREAM_INFO || length != STREAM_INFO_BYTES) {
      throw new IOException("the stream's figures do not come first");
    }
    boolean last = (first & LAST_BLOCK) != 0;
    byte[] block = new byte[4];
    while (!last) {
      data.readFully(block);
      last = (block[0] & LAST_BLOCK) != 0;
      data.skipNBytes(size(block, 1));
    }
    head[MARKER_BYTES] = (byte) (LAST_BLOCK | STREAM_INFO);
    return new SequenceInputStream(new ByteArrayInputStream(head), in);
  }

  private static int size(byte[] bytes, int at) {
    return (bytes[at] & 0xff) << 16 | (bytes[at + 1] & 0xff) << 8 | bytes[at + 2] & 0xff;
  }
}
