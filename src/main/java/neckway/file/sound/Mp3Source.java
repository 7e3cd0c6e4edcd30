package neckway.file.sound;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalLong;
import javazoom.jl.decoder.Bitstream;
import javazoom.jl.decoder.BitstreamException;
import javazoom.jl.decoder.Decoder;
import javazoom.jl.decoder.DecoderException;
import javazoom.jl.decoder.Header;
import javazoom.jl.decoder.SampleBuffer;
import neckway.neck.BadInput;
import neckway.words.Wording;

/** Sound of an MP3 file, decoded frame by frame with JLayer, the encoder's silence taken off. */
final class Mp3Source implements SoundSource {
  /** Samples by which every MPEG layer III decoder is late, as the LAME tag counts them. */
  static final int DECODER_DELAY = 529;

  private final Path path;
  private final Bitstream bits;
  private final Decoder decoder = new Decoder();
  private final Mp3Tag tag;
  private final int sampleRate;
  private final int channels;
  private final OptionalLong frames;
  private Header waiting;
  private short[] frame = {};
  private int frameLength;
  private int used;
  private long toSkip;
  private long framesLeft;
  private long framesRead;
  private boolean ended;
  private int damaged;

  Mp3Source(Path path) throws IOException {
    this.path = path;
    tag = Mp3Tag.read(path);
    bits = new Bitstream(new BufferedInputStream(Files.newInputStream(path), 1 << 16));
    Header first = nextHeader();
    if (first == null) {
      close();
      throw new BadInput(Wording.of("files.sound.none", path, SoundFiles.kinds()));
    }
    sampleRate = first.frequency();
    channels = first.mode() == Header.SINGLE_CHANNEL ? 1 : 2;
    int perFrame = sampleRate >= 32_000 ? 1152 : 576;
    if (tag.found()) {
      bits.closeFrame();
    } else {
      waiting = first;
    }
    if (tag.gapless()) {
      toSkip = tag.delaySamples() + DECODER_DELAY;
    }
    boolean known = tag.gapless() && tag.frames() > 0;
    framesLeft =
        known
            ? Math.max(0, tag.frames() * perFrame - tag.delaySamples() - tag.paddingSamples())
            : Long.MAX_VALUE;
    frames = known ? OptionalLong.of(framesLeft) : OptionalLong.empty();
  }

  private Header nextHeader() {
    if (waiting != null) {
      Header header = waiting;
      waiting = null;
      return header;
    }
    while (true) {
      try {
        return bits.readFrame();
      } catch (BitstreamException e) {
        damaged++;
        if (e.getErrorCode() == Bitstream.STREAM_EOF || damaged > 1000) {
          return null;
        }
      } catch (ArrayIndexOutOfBoundsException e) {
        return null;
      }
    }
  }

  @Override
  public int sampleRate() {
    return sampleRate;
  }

  @Override
  public int channels() {
    return channels;
  }

  @Override
  public OptionalLong frames() {
    return frames;
  }

  @Override
  public int read(float[] interleaved, int wanted) {
    while (used == frameLength || toSkip > 0) {
      if (used == frameLength && !decodeNext()) {
        return 0;
      }
      int skipped = (int) Math.min(toSkip, frameLength - used);
      used += skipped;
      toSkip -= skipped;
    }
    int got = (int) Math.min(framesLeft, Math.min(wanted, frameLength - used));
    for (int i = 0; i < got * channels; i++) {
      interleaved[i] = frame[used * channels + i] / 32768f;
    }
    used += got;
    framesLeft -= got;
    framesRead += got;
    return got;
  }

  private boolean decodeNext() {
    Header header = ended || framesLeft == 0 ? null : nextHeader();
    if (header == null) {
      ended = true;
      return false;
    }
    try {
      SampleBuffer sound = (SampleBuffer) decoder.decodeFrame(header, bits);
      frame = sound.getBuffer();
      frameLength = sound.getBufferLength() / channels;
    } catch (DecoderException | ArrayIndexOutOfBoundsException e) {
      damaged++;
      Arrays.fill(frame, (short) 0);
    } finally {
      bits.closeFrame();
    }
    used = 0;
    return true;
  }

  @Override
  public Optional<String> warning() {
    if (!tag.gapless()) {
      return Optional.of(Wording.of("files.mp3.start", path));
    }
    if (ended && framesLeft > 0 && framesLeft < Long.MAX_VALUE) {
      double rate = sampleRate;
      return Optional.of(
          path + ": " + SoundFiles.cutShort((framesRead + framesLeft) / rate, framesRead / rate));
    }
    return Optional.empty();
  }

  @Override
  public void close() throws IOException {
    try {
      bits.close();
    } catch (BitstreamException e) {
      throw new IOException(e);
    }
  }
}
