package neckway.file.sound;

import com.jcraft.jogg.Packet;
import com.jcraft.jogg.Page;
import com.jcraft.jogg.StreamState;
import com.jcraft.jogg.SyncState;
import io.github.jaredmdobson.concentus.OpusDecoder;
import io.github.jaredmdobson.concentus.OpusException;
import io.github.jaredmdobson.concentus.OpusPacketInfo;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import neckway.neck.BadInput;
import neckway.words.Wording;

/**
 * Sound of an Ogg Opus file, decoded packet by packet with Concentus at 48 kHz.
 *
 * <p>Source: RFC 7845 (Opus in Ogg: pre-skip, output gain, the last page's position), RFC 6716, 3.1
 * (how long a packet lasts).
 */
final class OpusSource implements SoundSource {
  /** What the first packet of such a file begins with. */
  static final String HEAD_NAME = "OpusHead";

  private static final int RATE = 48_000;
  private static final int CHUNK_BYTES = 8192;
  private static final int HEAD_BYTES = 19;

  /** The longest packet, 120 ms. */
  private static final int MOST_PACKET_FRAMES = 5760;

  private final Path path;
  private final InputStream in;
  private final SyncState sync = new SyncState();
  private final StreamState stream = new StreamState();
  private final Page page = new Page();
  private final Packet packet = new Packet();
  private OptionalInt serial = OptionalInt.empty();
  private OpusDecoder decoder;
  private int channels;
  private float scale;
  private int preSkip;
  private long toSkip;
  private short[] sound;
  private int used;
  private int ready;

  /** Frames decoded so far, the skipped ones too. */
  private long decoded;

  /** The position that a page gives less the frames decoded until there. */
  private OptionalLong positionAtStart = OptionalLong.empty();

  /** Frames that the last page leaves over; all until it is read. */
  private long framesInAll = Long.MAX_VALUE;

  private long framesGiven;
  private boolean lastPageSeen;
  private boolean ended;
  private int lost;
  private int holes;

  OpusSource(Path path) throws IOException {
    this.path = path;
    in = Files.newInputStream(path);
    sync.init();
    try {
      readHeaders();
    } catch (RuntimeException e) {
      in.close();
      throw e instanceof BadInput bad ? bad : spoiltHeader();
    } catch (OpusException e) {
      in.close();
      throw spoiltHeader();
    }
  }

  private BadInput spoiltHeader() {
    return new BadInput(Wording.of("files.opus.header", path));
  }

  private void readHeaders() throws IOException, OpusException {
    if (!nextPage()) {
      throw spoiltHeader();
    }
    stream.init(page.serialno());
    serial = OptionalInt.of(page.serialno());
    stream.pagein(page);
    readHead(ByteBuffer.wrap(headerPacket()).order(ByteOrder.LITTLE_ENDIAN));
    headerPacket();
    sound = new short[MOST_PACKET_FRAMES * channels];
  }

  private byte[] headerPacket() throws IOException {
    int got = stream.packetout(packet);
    while (got != 1) {
      if (got < 0 || !nextPage()) {
        throw spoiltHeader();
      }
      stream.pagein(page);
      got = stream.packetout(packet);
    }
    return bytes();
  }

  private byte[] bytes() {
    int from = packet.packet;
    return Arrays.copyOfRange(packet.packet_base, from, from + packet.bytes);
  }

  private void readHead(ByteBuffer head) throws OpusException {
    if (head.remaining() < HEAD_BYTES) {
      throw spoiltHeader();
    }
    byte[] name = new byte[HEAD_NAME.length()];
    head.get(name);
    int version = head.get() & 0xff;
    if (!new String(name, StandardCharsets.US_ASCII).equals(HEAD_NAME) || version > 15) {
      throw spoiltHeader();
    }
    channels = head.get() & 0xff;
    preSkip = Short.toUnsignedInt(head.getShort());
    toSkip = preSkip;
    head.getInt();
    // the gain is in 256ths of a decibel
    scale = (float) (Math.pow(10, head.getShort() / (20.0 * 256)) / 32768);
    int mapping = head.get();
    if (mapping != 0) {
      throw SoundFiles.unreadable(path, Wording.of("files.coding.opusStreams"));
    }
    decoder = new OpusDecoder(RATE, channels);
  }

  /** The next page; the stream itself passes over pages of other streams. */
  private boolean nextPage() throws IOException {
    while (sync.pageout(page) != 1) {
      int at = sync.buffer(CHUNK_BYTES);
      int got = in.read(sync.data, at, CHUNK_BYTES);
      if (got <= 0) {
        return false;
      }
      sync.wrote(got);
    }
    if (serial.isPresent() && page.serialno() == serial.getAsInt() && page.eos() != 0) {
      lastPageSeen = true;
      if (page.granulepos() >= 0) {
        framesInAll = Math.max(0, page.granulepos() - positionAtStart.orElse(0) - preSkip);
      }
    }
    return true;
  }

  @Override
  public int sampleRate() {
    return RATE;
  }

  @Override
  public int channels() {
    return channels;
  }

  @Override
  public OptionalLong frames() {
    return OptionalLong.empty();
  }

  @Override
  public int read(float[] interleaved, int wanted) throws IOException {
    while (used == ready || toSkip > 0) {
      if (used == ready && !decodeNext()) {
        return 0;
      }
      int skipped = (int) Math.min(toSkip, ready - used);
      used += skipped;
      toSkip -= skipped;
    }
    int got = (int) Math.min(framesInAll - framesGiven, Math.min(wanted, ready - used));
    if (got <= 0) {
      ended = true;
      return 0;
    }
    for (int i = 0; i < got * channels; i++) {
      interleaved[i] = sound[used * channels + i] * scale;
    }
    used += got;
    framesGiven += got;
    return got;
  }

  /** Decodes the next packet; one that is spoilt becomes silence of its own length. */
  private boolean decodeNext() throws IOException {
    while (!ended) {
      int got = stream.packetout(packet);
      if (got == 1) {
        decodePacket(bytes());
        if (packet.granulepos >= 0 && !lastPageSeen && positionAtStart.isEmpty()) {
          positionAtStart = OptionalLong.of(Math.max(0, packet.granulepos - decoded));
        }
        return true;
      }
      if (got < 0) {
        holes++;
      } else if (lastPageSeen || !nextPage()) {
        ended = true;
      } else {
        stream.pagein(page);
      }
    }
    return false;
  }

  private void decodePacket(byte[] bytes) {
    used = 0;
    ready = 0;
    try {
      ready = decoder.decode(bytes, 0, bytes.length, sound, 0, MOST_PACKET_FRAMES, false);
    } catch (OpusException | RuntimeException e) {
      lost++;
      ready = silence(bytes);
    }
    decoded += ready;
  }

  private int silence(byte[] bytes) {
    Arrays.fill(sound, (short) 0);
    int told = bytes.length == 0 ? 0 : OpusPacketInfo.getNumSamples(bytes, 0, bytes.length, RATE);
    return Math.max(0, Math.min(MOST_PACKET_FRAMES, told));
  }

  @Override
  public Optional<String> warning() {
    List<String> words = new ArrayList<>();
    if (ended && !lastPageSeen) {
      words.add(Wording.of("files.sound.noEnd"));
    }
    if (lost > 0) {
      words.add(Wording.counted("files.opus.lost", lost, lost));
    }
    if (holes > 0) {
      words.add(Wording.counted("files.opus.holes", holes, holes));
    }
    return words.isEmpty() ? Optional.empty() : Optional.of(path + ": " + String.join("; ", words));
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
