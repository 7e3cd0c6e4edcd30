package neckway.file.sound;

import java.io.EOFException;
import java.io.IOException;
import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import neckway.neck.BadInput;
import neckway.words.Wording;

/**
 * Reads the head of an MP4 file (M4A, 3GP, a film's sound, QuickTime): where its AAC frames lie.
 *
 * <p>Source: ISO/IEC 14496-12 (boxes), 14496-14 and 14496-1, 7.2.6 (esds); Apple, "QuickTime File
 * Format" (sound descriptions of version 1 and 2, "wave"; iTunSMPB).
 */
final class Mp4Header {
  private static final int BOX_HEAD_BYTES = 8;

  /** Three hours of frames take some 4 MB; a head this large is damage. */
  private static final long MOST_HEAD_BYTES = 64L << 20;

  /** A frame of more bytes is damage: 6,144 bits a channel (ISO/IEC 14496-3, 4.5.1.1). */
  private static final int MOST_FRAME_BYTES = 768 * 8;

  private static final int FIRST_DESCRIPTION_BYTES = 8;
  private static final int MPEG4_AUDIO = 0x40;
  private static final int ES_DESCRIPTOR = 3;
  private static final int DECODER_CONFIG = 4;
  private static final int DECODER_SPECIFIC = 5;

  /** iTunes' note of the silence in front: a hexadecimal 0, then delay, padding and length. */
  private static final Pattern GAPLESS =
      Pattern.compile(
          "iTunSMPB.{1,40}? 0{8} ([0-9A-Fa-f]{8}) ([0-9A-Fa-f]{8}) ([0-9A-Fa-f]{16})",
          Pattern.DOTALL);

  private final Path path;
  private final long fileBytes;
  private final ByteBuffer movie;

  private Mp4Header(Path path, long fileBytes, ByteBuffer movie) {
    this.path = path;
    this.fileBytes = fileBytes;
    this.movie = movie;
  }

  /**
   * Reads the head.
   *
   * @throws BadInput where there is no sound that can be read, in one line
   */
  static Mp4Sound read(Path path) throws IOException {
    try (HeaderBytes head = new HeaderBytes(path, true)) {
      ByteBuffer movie = ByteBuffer.wrap(movie(path, head));
      return new Mp4Header(path, head.length(), movie).sound();
    } catch (BufferUnderflowException | IllegalArgumentException e) {
      throw spoilt(path);
    }
  }

  private static BadInput spoilt(Path path) {
    return new BadInput(Wording.of("files.mp4.header", path));
  }

  private static byte[] movie(Path path, HeaderBytes head) throws IOException {
    long at = 0;
    while (at + BOX_HEAD_BYTES <= head.length()) {
      head.seek(at);
      long size = head.u32();
      String name = head.name();
      if (size == 1) {
        size = head.i64();
      } else if (size == 0) {
        size = head.length() - at;
      }
      long bodyBytes = at + size - head.position();
      if (bodyBytes < 0 || at + size < at) {
        throw spoilt(path);
      }
      if (name.equals("moov")) {
        if (at + size > head.length()) {
          throw new EOFException();
        }
        if (bodyBytes > MOST_HEAD_BYTES) {
          throw spoilt(path);
        }
        return head.bytes((int) bodyBytes);
      }
      at += size;
    }
    throw new BadInput(Wording.of("files.mp4.noTable", path));
  }

  private Mp4Sound sound() {
    boolean fragmented = child(movie, "mvex").isPresent();
    List<ByteBuffer> tracks =
        children(movie, "trak").stream().filter(track -> handler(track).equals("soun")).toList();
    if (tracks.isEmpty()) {
      throw new BadInput(Wording.of("files.mp4.noSound", path, SoundFiles.kinds()));
    }
    ByteBuffer track =
        tracks.stream().filter(t -> coding(t).equals("mp4a")).findFirst().orElse(tracks.get(0));
    if (!coding(track).equals("mp4a")) {
      throw SoundFiles.unreadable(path, codingWords(coding(track)));
    }
    if (fragmented) {
      throw new BadInput(Wording.of("files.mp4.fragments", path));
    }
    return sound(track);
  }

  private static String codingWords(String coding) {
    return switch (coding) {
      case "alac" -> "Apple Lossless (ALAC)";
      case "samr", "sawb" -> "AMR";
      case "ac-3", "ec-3" -> "Dolby Digital";
      case ".mp3" -> Wording.of("files.coding.mp3InMp4");
      default -> {
        String letters = coding.replaceAll("[^A-Za-z0-9.+-]", "?");
        yield Wording.of("files.coding.letters", letters);
      }
    };
  }

  private static String handler(ByteBuffer track) {
    ByteBuffer handler = at(track, "mdia", "hdlr");
    return name(handler.position(handler.position() + 8));
  }

  private static String coding(ByteBuffer track) {
    ByteBuffer description = at(track, "mdia", "minf", "stbl", "stsd");
    return name(description.position(description.position() + FIRST_DESCRIPTION_BYTES + 4));
  }

  private Mp4Sound sound(ByteBuffer track) {
    ByteBuffer table = at(track, "mdia", "minf", "stbl");
    AacConfig config = AacConfig.read(path, decoderSetting(at(table, "stsd")));
    int[] sizes = sizes(table);
    long[] offsets = offsets(table, sizes);
    long timescale = timescale(at(track, "mdia", "mdhd"));
    long last = lastFrameTicks(at(table, "stts"));
    Optional<ByteBuffer> edits = child(track, "edts").flatMap(edit -> child(edit, "elst"));
    List<Edit> heard = edits.map(this::edits).orElse(List.of());
    if (heard.size() > 1) {
      throw new BadInput(Wording.of("files.mp4.cuts", path, heard.size()));
    }
    if (heard.size() == 1) {
      Edit edit = heard.get(0);
      OptionalLong length = editTicks(edit, timescale);
      OptionalLong start = OptionalLong.of(edit.mediaStart);
      return new Mp4Sound(config, offsets, sizes, timescale, last, start, length);
    }
    Matcher note = GAPLESS.matcher(StandardCharsets.ISO_8859_1.decode(movie.duplicate()));
    if (note.find()) {
      OptionalLong start = OptionalLong.of(Long.parseLong(note.group(1), 16));
      OptionalLong length = OptionalLong.of(Long.parseUnsignedLong(note.group(3), 16));
      return new Mp4Sound(config, offsets, sizes, config.sampleRate(), last, start, length);
    }
    OptionalLong unknown = OptionalLong.empty();
    return new Mp4Sound(config, offsets, sizes, timescale, last, unknown, unknown);
  }

  /** Where a track begins in its own ticks, and for how long of the film's ticks it is heard. */
  private record Edit(long movieLength, long mediaStart) {}

  /** What is heard of the track: all edits but the empty ones, which only wait. */
  private List<Edit> edits(ByteBuffer list) {
    boolean wide = list.getInt() >>> 24 == 1;
    int count = list.getInt();
    List<Edit> heard = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      long length = wide ? list.getLong() : Integer.toUnsignedLong(list.getInt());
      long start = wide ? list.getLong() : list.getInt();
      list.getInt();
      if (start >= 0) {
        heard.add(new Edit(length, start));
      }
    }
    return heard;
  }

  /** An edit's length in the track's ticks, rounded up; a length of 0 means to the end. */
  private OptionalLong editTicks(Edit edit, long timescale) {
    double seconds = (edit.movieLength + 1.0) / timescale(at(movie, "mvhd"));
    return edit.movieLength <= 0
        ? OptionalLong.empty()
        : OptionalLong.of((long) Math.ceil(seconds * timescale));
  }

  private long timescale(ByteBuffer times) {
    boolean wide = times.getInt() >>> 24 == 1;
    times.position(times.position() + (wide ? 16 : 8));
    long timescale = Integer.toUnsignedLong(times.getInt());
    if (timescale == 0) {
      throw spoilt(path);
    }
    return timescale;
  }

  private static long lastFrameTicks(ByteBuffer durations) {
    durations.getInt();
    int runs = durations.getInt();
    long ticks = 0;
    for (int i = 0; i < runs; i++) {
      durations.getInt();
      ticks = Integer.toUnsignedLong(durations.getInt());
    }
    return ticks;
  }

  private int[] sizes(ByteBuffer table) {
    ByteBuffer box =
        child(table, "stsz")
            .orElseThrow(() -> SoundFiles.unreadable(path, Wording.of("files.coding.packed")));
    box.getInt();
    int same = box.getInt();
    int count = box.getInt();
    if (count < 0 || (same == 0 ? 4L * count > box.remaining() : (long) same * count > fileBytes)) {
      throw spoilt(path);
    }
    int[] sizes = new int[count];
    for (int i = 0; i < count; i++) {
      sizes[i] = same == 0 ? box.getInt() : same;
      if (sizes[i] < 0 || sizes[i] > MOST_FRAME_BYTES) {
        throw spoilt(path);
      }
    }
    return sizes;
  }

  /** Frames lie in chunks; each run of chunks holds so many frames in each. */
  private long[] offsets(ByteBuffer table, int[] sizes) {
    Optional<ByteBuffer> narrow = child(table, "stco");
    ByteBuffer chunks = narrow.orElseGet(() -> at(table, "co64"));
    ByteBuffer runs = at(table, "stsc");
    chunks.getInt();
    int chunkCount = chunks.getInt();
    runs.getInt();
    int runsLeft = runs.getInt();
    long[] offsets = new long[sizes.length];
    int frame = 0;
    long framesPerChunk = 0;
    long nextRun = runsLeft > 0 ? runs.getInt() : Long.MAX_VALUE;
    for (int chunk = 1; chunk <= chunkCount && frame < sizes.length; chunk++) {
      if (chunk == nextRun) {
        framesPerChunk = Integer.toUnsignedLong(runs.getInt());
        runs.getInt();
        runsLeft--;
        nextRun = runsLeft > 0 ? runs.getInt() : Long.MAX_VALUE;
      }
      long offset = narrow.isPresent() ? Integer.toUnsignedLong(chunks.getInt()) : chunks.getLong();
      for (long i = 0; i < framesPerChunk && frame < sizes.length; i++) {
        offsets[frame] = offset;
        offset += sizes[frame];
        frame++;
      }
    }
    if (frame < sizes.length) {
      throw spoilt(path);
    }
    return offsets;
  }

  /** The decoder's setting inside the first sound description. */
  private byte[] decoderSetting(ByteBuffer descriptions) {
    descriptions.position(descriptions.position() + FIRST_DESCRIPTION_BYTES);
    ByteBuffer entry = body(descriptions);
    entry.position(entry.position() + 8);
    int version = entry.getShort();
    int more = version == 1 ? 16 : version == 2 ? 36 : 0;
    entry.position(entry.position() + 18 + more);
    ByteBuffer inside = child(entry, "wave").orElse(entry);
    ByteBuffer stream = at(inside, "esds");
    stream.getInt();
    return specificSetting(descriptor(stream, ES_DESCRIPTOR));
  }

  private byte[] specificSetting(ByteBuffer stream) {
    stream.getShort();
    int flags = stream.get();
    int skipped = (flags & 0x80) != 0 ? 2 : 0;
    skipped += (flags & 0x20) != 0 ? 2 : 0;
    stream.position(stream.position() + skipped);
    ByteBuffer config = descriptor(stream, DECODER_CONFIG);
    int kind = config.get() & 0xff;
    if (kind != MPEG4_AUDIO) {
      throw SoundFiles.unreadable(
          path,
          kind == 0x69 || kind == 0x6b
              ? Wording.of("files.coding.mp3InMp4")
              : Wording.of("files.coding.mpegKind", kind));
    }
    config.position(config.position() + 12);
    ByteBuffer setting = descriptor(config, DECODER_SPECIFIC);
    byte[] bytes = new byte[setting.remaining()];
    setting.get(bytes);
    return bytes;
  }

  /** The body of a descriptor, whose length takes seven bits of each of up to four bytes. */
  private ByteBuffer descriptor(ByteBuffer from, int tag) {
    if (from.get() != tag) {
      throw spoilt(path);
    }
    int length = 0;
    for (int i = 0; i < 4; i++) {
      int next = from.get();
      length = length << 7 | next & 0x7f;
      if (next >= 0) {
        break;
      }
    }
    return part(from, length);
  }

  private static ByteBuffer at(ByteBuffer box, String... names) {
    ByteBuffer found = box;
    for (String name : names) {
      found = child(found, name).orElseThrow(BufferUnderflowException::new);
    }
    return found;
  }

  private static Optional<ByteBuffer> child(ByteBuffer box, String name) {
    return children(box, name).stream().findFirst();
  }

  /** The bodies of the boxes of a name that lie directly in a box. */
  private static List<ByteBuffer> children(ByteBuffer box, String name) {
    ByteBuffer rest = box.duplicate();
    List<ByteBuffer> found = new ArrayList<>();
    while (rest.remaining() >= BOX_HEAD_BYTES) {
      int nameAt = rest.position() + 4;
      boolean wanted = name(rest.duplicate().position(nameAt)).equals(name);
      if (!wanted && rest.getInt(rest.position()) < BOX_HEAD_BYTES) {
        break;
      }
      ByteBuffer body = body(rest);
      if (wanted) {
        found.add(body);
      }
    }
    return found;
  }

  /** Reads one box and gives what is in it. */
  private static ByteBuffer body(ByteBuffer from) {
    int size = from.getInt();
    from.getInt();
    return part(from, size - BOX_HEAD_BYTES);
  }

  private static ByteBuffer part(ByteBuffer from, int length) {
    if (length < 0 || length > from.remaining()) {
      throw new BufferUnderflowException();
    }
    ByteBuffer part = from.slice(from.position(), length);
    from.position(from.position() + length);
    return part;
  }

  private static String name(ByteBuffer at) {
    byte[] letters = new byte[4];
    at.get(letters);
    return new String(letters, StandardCharsets.ISO_8859_1);
  }
}
