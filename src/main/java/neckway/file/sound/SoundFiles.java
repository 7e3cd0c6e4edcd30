package neckway.file.sound;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import neckway.file.InputFile;
import neckway.neck.BadInput;
import neckway.words.Wording;

/** Finds out by its content, never by its name, what kind of sound a file holds, and opens it. */
final class SoundFiles {
  /** Lowest and highest sample rate that the ear takes, frames a second. */
  static final int MIN_RATE = 8_000;

  static final int MAX_RATE = 192_000;

  private static final int MAX_CHANNELS = 64;
  private static final int PROBE_BYTES = 64;

  /** Where the first packet of an Ogg file begins: its page has one segment (RFC 3533, 6). */
  private static final int OGG_PACKET = 28;

  private SoundFiles() {}

  /** What can be read, as told to a person. */
  static String kinds() {
    return Wording.of("files.sound.kinds");
  }

  /** What is said of a file that holds nothing. */
  static BadInput noSound(Path path) {
    return new BadInput(Wording.of("files.sound.empty", path));
  }

  /** What is said, without the file's name, of sound that ends before its header says. */
  static String cutShort(double promisedSeconds, double presentSeconds) {
    return Wording.of(
        "files.sound.cutShort",
        Wording.fixed(promisedSeconds, 2),
        Wording.fixed(presentSeconds, 2));
  }

  /**
   * Opens a file.
   *
   * @throws BadInput where it is no sound file, or one that cannot be used, in one line
   */
  static SoundSource open(Path path) {
    try {
      SoundSource source = source(path, probe(path));
      try {
        check(path, source);
      } catch (BadInput bad) {
        source.close();
        throw bad;
      }
      return source;
    } catch (EOFException e) {
      throw new BadInput(Wording.of("files.sound.header", path), e);
    } catch (IOException e) {
      throw new BadInput(Wording.of("files.sound.unread", path, e.getMessage()), e);
    }
  }

  private static byte[] probe(Path path) throws IOException {
    InputFile.check(path);
    try (InputStream in = Files.newInputStream(path)) {
      byte[] start = in.readNBytes(PROBE_BYTES);
      if (start.length == 0) {
        throw new BadInput(Wording.of("files.sound.noBytes", path));
      }
      return start;
    }
  }

  private static SoundSource source(Path path, byte[] start) throws IOException {
    String first = text(start, 0);
    String third = text(start, 8);
    switch (first) {
      case "RIFF", "RF64", "RIFX" -> {
        if (third.equals("WAVE")) {
          return new PcmSource(path, WavHeader.read(path, first.equals("RIFX")));
        }
        if (start.length < 12) {
          throw new EOFException();
        }
      }
      case "FORM" -> {
        if (third.equals("AIFF") || third.equals("AIFC")) {
          return new PcmSource(path, AiffHeader.read(path));
        }
        if (start.length < 12) {
          throw new EOFException();
        }
      }
      case ".snd" -> {
        return new PcmSource(path, AuHeader.read(path));
      }
      case "fLaC" -> {
        return new FlacSource(path);
      }
      case "OggS" -> {
        boolean opus = text(start, OGG_PACKET).equals(OpusSource.HEAD_NAME.substring(0, 4));
        return opus ? new OpusSource(path) : new VorbisSource(path);
      }
      default -> {
        if (mp4(start)) {
          return new AacSource(path);
        }
        String other = otherKind(start);
        if (!other.isEmpty()) {
          throw unreadable(path, other);
        }
        if (mp3(start)) {
          return new Mp3Source(path);
        }
      }
    }
    throw unknown(path, start);
  }

  /** The first box of an MP4, M4A, 3GP or QuickTime file (ISO/IEC 14496-12, 4.3). */
  private static boolean mp4(byte[] start) {
    return switch (text(start, 4)) {
      case "ftyp", "moov", "mdat", "wide" -> start[0] == 0;
      default -> false;
    };
  }

  /** Kinds of sound that phones and recorders write and that cannot be read; "" for any other. */
  private static String otherKind(byte[] start) {
    if (start.length >= 2 && (start[0] & 0xff) == 0xff && (start[1] & 0xf6) == 0xf0) {
      return Wording.of("files.coding.adts");
    }
    return switch (text(start, 0)) {
      case "#!AM" -> "AMR";
      case "caff" -> Wording.of("files.coding.caf");
      case "0&\u00b2u" -> "WMA";
      case "\u001aE\u00df\u00a3" -> Wording.of("files.coding.matroska");
      default -> "";
    };
  }

  /** What is said of sound in a coding that cannot be read. */
  static BadInput unreadable(Path path, String coding) {
    return new BadInput(Wording.of("files.sound.coding", path, coding));
  }

  /** An ID3 tag, or a frame header of MPEG layer III (ISO/IEC 11172-3, 2.4.1.3). */
  private static boolean mp3(byte[] start) {
    if (text(start, 0).startsWith("ID3")) {
      return true;
    }
    return start.length >= 4
        && (start[0] & 0xff) == 0xff
        && (start[1] & 0xe6) == 0xe2
        && (start[2] & 0xf0) != 0xf0
        && (start[2] & 0x0c) != 0x0c;
  }

  private static String text(byte[] start, int at) {
    return start.length < at + 4 ? "" : new String(start, at, 4, StandardCharsets.ISO_8859_1);
  }

  /** What is said of a file that begins as no kind of sound does. */
  private static BadInput unknown(Path path, byte[] start) {
    for (byte b : start) {
      if (b < 32 && b != '\n' && b != '\r' && b != '\t') {
        return new BadInput(Wording.of("files.sound.unknown", path, kinds()));
      }
    }
    String words = new String(start, StandardCharsets.US_ASCII).strip();
    String first = words.substring(0, Math.min(20, words.length()));
    return new BadInput(Wording.of("files.sound.text", path, first, kinds()));
  }

  private static void check(Path path, SoundSource source) {
    if (source.channels() < 1 || source.channels() > MAX_CHANNELS) {
      throw new BadInput(Wording.of("files.sound.channels", path, source.channels(), MAX_CHANNELS));
    }
    if (source.sampleRate() < MIN_RATE || source.sampleRate() > MAX_RATE) {
      throw new BadInput(
          Wording.of("files.sound.rate", path, source.sampleRate(), MIN_RATE, MAX_RATE));
    }
    if (source.frames().isPresent() && source.frames().getAsLong() == 0) {
      throw noSound(path);
    }
  }
}
