package neckway.file.sound;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalLong;
import neckway.neck.BadInput;
import neckway.words.Wording;

/**
 * Reads a recording as mono sound, in constant memory however long it is.
 *
 * <p>The kind of file is told by its content, not by its name: WAV (8 to 32 bits, float, G.711,
 * RF64), AIFF and AIFF-C, AU, FLAC, MP3, Ogg Vorbis, Ogg Opus and AAC in MP4, 8 to 192 kHz.
 */
public final class TakeReader implements AutoCloseable {
  private static final int BLOCK_FRAMES = 2048;

  /** No sound is this loud: 120 dB over full scale. Such a number is damage. */
  private static final float ABSURD = 1e6f;

  private final Path path;
  private final SoundSource source;
  private final ChannelWeights channels;
  private final float[] block;
  private long framesRead;

  private TakeReader(Path path, SoundSource source, ChannelWeights channels) {
    this.path = path;
    this.source = source;
    this.channels = channels;
    this.block = new float[BLOCK_FRAMES * source.channels()];
  }

  /**
   * Opens a recording.
   *
   * @throws BadInput where it cannot be used: one line that says what it is and how to mend it
   */
  public static TakeReader open(Path path, Channel channel) {
    SoundSource source = SoundFiles.open(path);
    try {
      ChannelWeights channels = ChannelWeights.of(channel, source);
      if (channel == Channel.AUTO && source.channels() > 1) {
        source.close();
        source = SoundFiles.open(path);
      }
      return new TakeReader(path, source, channels);
    } catch (IOException e) {
      closeQuietly(source);
      throw new BadInput(Wording.of("files.sound.unread", path, e.getMessage()), e);
    } catch (RuntimeException e) {
      closeQuietly(source);
      throw e;
    }
  }

  private static void closeQuietly(SoundSource source) {
    try {
      source.close();
    } catch (IOException e) {
      // another complaint is already on its way
    }
  }

  /** Frames a second, 8,000 to 192,000. */
  public int sampleRate() {
    return source.sampleRate();
  }

  /** Frames in the whole take, where its file tells that without being read to the end. */
  public OptionalLong frames() {
    return source.frames();
  }

  /**
   * What a person should know of a take that was read all the same, such as one cut short: one
   * line. Final once {@link #read} has returned 0.
   */
  public Optional<String> warning() {
    Optional<String> ofFile = source.warning();
    if (!channels.sidesDiffer()) {
      return ofFile;
    }
    String sides = Wording.of("files.sound.sides", path);
    return Optional.of(ofFile.map(words -> words + "; " + sides).orElse(sides));
  }

  /**
   * Reads on.
   *
   * @param buffer mono samples, full scale -1 to 1; at least one long
   * @return how many were read: 1 or more, and 0 only at the end of the take
   * @throws BadInput for a sample that is not a number, naming its time, or a disk that fails
   */
  public int read(float[] buffer) {
    if (buffer.length == 0) {
      throw new IllegalArgumentException("a buffer with no room");
    }
    try {
      int got = source.read(block, Math.min(BLOCK_FRAMES, buffer.length));
      float[] weights = channels.weights();
      for (int f = 0; f < got; f++) {
        float sum = 0;
        for (int c = 0; c < weights.length; c++) {
          float sample = block[f * weights.length + c];
          if (!(Math.abs(sample) < ABSURD)) {
            throw spoilt(framesRead + f, sample);
          }
          sum += weights[c] * sample;
        }
        buffer[f] = sum;
      }
      framesRead += got;
      if (framesRead == 0) {
        throw SoundFiles.noSound(path);
      }
      return got;
    } catch (IOException e) {
      throw new BadInput(Wording.of("files.sound.unreadOn", path, e.getMessage()), e);
    }
  }

  private BadInput spoilt(long frame, float sample) {
    return new BadInput(
        Wording.of(
            "files.sound.spoilt",
            path,
            Wording.fixed(frame / (double) source.sampleRate(), 3),
            Float.toString(sample).replace(".", Wording.of("number.point"))));
  }

  @Override
  public void close() {
    closeQuietly(source);
  }
}
