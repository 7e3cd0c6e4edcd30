package neckway.file.sound;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Locale;
import neckway.file.WriteFault;
import neckway.neck.BadInput;
import neckway.words.Wording;

/**
 * Writes a mono WAV file as the sound comes.
 *
 * <p>The sizes in the header are filled in about once a second of sound, so that after a crash the
 * file is a whole WAV that lacks at most the last second. The sound goes into a file beside the
 * target, which {@link #finish()} moves into place: an older file of that name stays as it was
 * until then. After a crash what was written lies in that neighbour, {@code take.part.wav} beside
 * {@code take.wav}, and the next take goes beside it, {@code take-2.part.wav}.
 *
 * <p>Not for several threads at once.
 */
public final class WavWriter implements AutoCloseable {
  /** How a sample is written. */
  public enum Coding {
    /** 16-bit whole numbers. */
    PCM_16(2),
    /** 24-bit whole numbers. */
    PCM_24(3),
    /** 32-bit floats. */
    FLOAT_32(4);

    private final int bytes;

    Coding(int bytes) {
      this.bytes = bytes;
    }

    private static int toInt(float sample, int scale) {
      return (int) Math.max(-scale, Math.min(scale - 1L, Math.round((double) sample * scale)));
    }
  }

  /** What a WAV file's 32-bit size can hold, less room for the header. */
  static final long MAX_DATA_BYTES = 0xffff_ffffL - 64;

  private static final int HEADER_BYTES = 44;
  private static final String PART_SUFFIX = ".part.wav";

  private final Path target;
  private final Path part;
  private final int sampleRate;
  private final Coding coding;
  private final long maxDataBytes;
  private final FileChannel file;
  private final ByteBuffer buffer;
  private long dataBytes;
  private long bytesAtHeader;
  private boolean done;

  /**
   * Starts a file.
   *
   * @param target where {@link #finish()} puts it
   * @param sampleRate frames a second
   * @throws BadInput where nothing can be written there
   */
  public WavWriter(Path target, int sampleRate, Coding coding) {
    this(target, sampleRate, coding, MAX_DATA_BYTES);
  }

  WavWriter(Path target, int sampleRate, Coding coding, long maxDataBytes) {
    this.target = target;
    this.sampleRate = sampleRate;
    this.coding = coding;
    this.maxDataBytes = maxDataBytes;
    Path absolute = target.toAbsolutePath();
    if (Files.isDirectory(absolute)) {
      throw new BadInput(Wording.of("files.wav.folder", target));
    }
    if (absolute.getParent() == null || !Files.isDirectory(absolute.getParent())) {
      throw new BadInput(Wording.of("files.wav.noFolder", target));
    }
    String stem = stem(absolute.getFileName().toString());
    buffer = ByteBuffer.allocateDirect(8192 * 3).order(ByteOrder.LITTLE_ENDIAN);
    try {
      part = free(absolute, stem);
      file = FileChannel.open(part, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
    } catch (IOException e) {
      throw cannotWrite(e);
    }
    try {
      writeHeader();
      file.position(HEADER_BYTES);
    } catch (IOException e) {
      close();
      throw cannotWrite(e);
    }
  }

  private static String stem(String name) {
    return name.toLowerCase(Locale.ROOT).endsWith(".wav")
        ? name.substring(0, name.length() - 4)
        : name;
  }

  /** A neighbour that is not there yet: one that is may hold a take that a crash left. */
  private static Path free(Path target, String stem) {
    Path free = target.resolveSibling(stem + PART_SUFFIX);
    for (int number = 2; Files.exists(free); number++) {
      free = target.resolveSibling(stem + "-" + number + PART_SUFFIX);
    }
    return free;
  }

  /** Frames written so far. */
  public long frames() {
    return (dataBytes + buffer.position()) / coding.bytes;
  }

  /**
   * Writes samples; full scale is -1 to 1, and what is louder is held there.
   *
   * @throws BadInput where the disk is full or fails, or the file would pass 4 GB; what was written
   *     before stays and can be finished
   */
  public void write(float[] samples, int offset, int length) {
    long wanted = (frames() + length) * coding.bytes;
    if (wanted > maxDataBytes) {
      throw new BadInput(Wording.of("files.wav.full", target));
    }
    for (int i = offset; i < offset + length; i++) {
      if (buffer.remaining() < coding.bytes) {
        drain();
      }
      put(samples[i]);
    }
    if (dataBytes + buffer.position() - bytesAtHeader >= (long) sampleRate * coding.bytes) {
      flush();
    }
  }

  private void put(float sample) {
    switch (coding) {
      case PCM_16 -> buffer.putShort((short) Coding.toInt(sample, 32768));
      case PCM_24 -> {
        int value = Coding.toInt(sample, 8388608);
        buffer.putShort((short) value).put((byte) (value >> 16));
      }
      case FLOAT_32 -> buffer.putFloat(sample);
    }
  }

  /** Brings the file and its header up to date with what was written. */
  public void flush() {
    drain();
    try {
      writeHeader();
    } catch (IOException e) {
      throw cannotWrite(e);
    }
  }

  /**
   * Asks the system to put on the disk what was flushed, so that a power cut loses no more than a
   * crash does. It may take long; any thread may call it, beside one that writes.
   *
   * @return false where the file is closed already or the disk fails
   */
  public boolean force() {
    try {
      file.force(false);
      return true;
    } catch (IOException e) {
      return false;
    }
  }

  private void drain() {
    buffer.flip();
    int bytes = buffer.limit();
    try {
      while (buffer.hasRemaining()) {
        file.write(buffer);
      }
    } catch (IOException e) {
      cutTo(HEADER_BYTES + dataBytes);
      throw cannotWrite(e);
    } finally {
      buffer.clear();
    }
    dataBytes += bytes;
  }

  /** Takes away what a full disk took of a block, so that the file ends as its header says. */
  private void cutTo(long bytes) {
    try {
      file.truncate(bytes);
    } catch (IOException e) {
      // the header does not count what is left there
    }
  }

  private void writeHeader() throws IOException {
    ByteBuffer head = ByteBuffer.allocate(HEADER_BYTES).order(ByteOrder.LITTLE_ENDIAN);
    head.put("RIFF".getBytes(StandardCharsets.US_ASCII));
    head.putInt((int) (HEADER_BYTES - 8 + dataBytes + (dataBytes & 1)));
    head.put("WAVEfmt ".getBytes(StandardCharsets.US_ASCII));
    head.putInt(16);
    head.putShort((short) (coding == Coding.FLOAT_32 ? 3 : 1));
    head.putShort((short) 1);
    head.putInt(sampleRate);
    head.putInt(sampleRate * coding.bytes);
    head.putShort((short) coding.bytes);
    head.putShort((short) (8 * coding.bytes));
    head.put("data".getBytes(StandardCharsets.US_ASCII));
    head.putInt((int) dataBytes);
    head.flip();
    while (head.hasRemaining()) {
      file.write(head, head.position());
    }
    bytesAtHeader = dataBytes;
  }

  /**
   * Ends the file and moves it into place.
   *
   * @throws BadInput where it cannot be moved there; the sound is then in the neighbour
   */
  public void finish() {
    if (done) {
      return;
    }
    flush();
    done = true;
    try {
      if ((dataBytes & 1) == 1) {
        file.write(ByteBuffer.allocate(1));
      }
      file.close();
      Files.move(part, target.toAbsolutePath(), StandardCopyOption.REPLACE_EXISTING);
    } catch (IOException e) {
      throw new BadInput(Wording.of("files.wav.notMoved", target, WriteFault.words(e), part), e);
    }
  }

  /** Gives up a file that was not finished: it is deleted, and the target stays as it was. */
  @Override
  public void close() {
    if (done) {
      return;
    }
    done = true;
    try {
      file.close();
      Files.deleteIfExists(part);
    } catch (IOException e) {
      throw cannotWrite(e);
    }
  }

  private BadInput cannotWrite(IOException e) {
    return WriteFault.of(target, e);
  }
}
