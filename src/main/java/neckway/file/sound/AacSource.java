package neckway.file.sound;

import java.io.EOFException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.logging.Logger;
import neckway.words.Wording;
import net.sourceforge.jaad.aac.Decoder;
import net.sourceforge.jaad.mp4.MP4Exception;

/**
 * AAC sound of an MP4 file, decoded frame by frame with JAAD, the encoder's silence taken off.
 *
 * <p>A frame that the decoder cannot take becomes silence of the same length, so that all later
 * times stay right; it is counted and told.
 */
final class AacSource implements SoundSource {
  /** Samples of each channel in a frame (ISO/IEC 14496-3, 4.5.1.1). */
  static final int FRAME_SAMPLES = 1024;

  /** The least that every AAC encoder puts in front: the overlap of one frame. */
  static final int LEAST_PRIMING = 1024;

  private static final float FULL_SCALE = 32768f;

  /** The decoder's logs would tell on standard error what is told here; held, so that they stay. */
  private static final List<Logger> DECODER_LOGS =
      List.of(Logger.getLogger("jaad"), Logger.getLogger("net.sourceforge.jaad"));

  static {
    DECODER_LOGS.forEach(log -> log.setUseParentHandlers(false));
  }

  private final Path path;
  private final Mp4Sound sound;
  private final HeaderBytes file;
  private final Decoder decoder;
  private final List<float[]> decoded = new ArrayList<>();
  private final long framesInAll;
  private int nextFrame;
  private int used;
  private int ready;
  private long toSkip;
  private long framesLeft;
  private int lost;
  private boolean cutShort;

  AacSource(Path path) throws IOException {
    this.path = path;
    sound = Mp4Header.read(path);
    decoder = decoder(path, sound.config());
    toSkip =
        sound.startTicks().isPresent() ? samples(sound.startTicks().getAsLong()) : LEAST_PRIMING;
    framesInAll = framesInAll();
    framesLeft = framesInAll;
    file = new HeaderBytes(path, true);
  }

  private static Decoder decoder(Path path, AacConfig config) {
    try {
      return Decoder.create(config.bytes());
    } catch (MP4Exception | RuntimeException e) {
      throw SoundFiles.unreadable(path, Wording.of("files.coding.aacSetting"));
    }
  }

  private long samples(long ticks) {
    return Math.round((double) ticks * sound.config().sampleRate() / sound.timescale());
  }

  private long framesInAll() {
    long lastSamples = samples(sound.lastFrameTicks());
    boolean filledUp = lastSamples > 0 && lastSamples < FRAME_SAMPLES;
    long decodable = (long) sound.sizes().length * FRAME_SAMPLES;
    long toEnd = decodable - (filledUp ? FRAME_SAMPLES - lastSamples : 0) - toSkip;
    long told = sound.lengthTicks().isPresent() ? samples(sound.lengthTicks().getAsLong()) : toEnd;
    return Math.max(0, Math.min(toEnd, told));
  }

  @Override
  public int sampleRate() {
    return sound.config().sampleRate();
  }

  @Override
  public int channels() {
    return sound.config().channels();
  }

  @Override
  public OptionalLong frames() {
    return OptionalLong.of(framesInAll);
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
    int got = (int) Math.min(framesLeft, Math.min(wanted, ready - used));
    int channels = channels();
    for (int c = 0; c < channels; c++) {
      float[] channel = decoded.isEmpty() ? null : decoded.get(c);
      for (int f = 0; f < got; f++) {
        interleaved[f * channels + c] = channel == null ? 0 : channel[used + f] / FULL_SCALE;
      }
    }
    used += got;
    framesLeft -= got;
    return got;
  }

  /** Decodes the next frame; where that fails {@link #decoded} is empty, which is silence. */
  private boolean decodeNext() throws IOException {
    if (cutShort || framesLeft == 0 || nextFrame == sound.sizes().length) {
      return false;
    }
    byte[] frame;
    try {
      file.seek(sound.offsets()[nextFrame]);
      frame = file.bytes(sound.sizes()[nextFrame]);
    } catch (EOFException e) {
      cutShort = true;
      return false;
    }
    nextFrame++;
    decoded.clear();
    try {
      decoder.decodeFrame(frame, (channels, samples, rate) -> decoded.addAll(channels));
    } catch (RuntimeException e) {
      decoded.clear();
    }
    if (!decoded.isEmpty() && decoded.get(0).length == 2 * FRAME_SAMPLES) {
      throw SoundFiles.unreadable(path, "HE-AAC");
    }
    if (!whole()) {
      decoded.clear();
      lost++;
    }
    used = 0;
    ready = FRAME_SAMPLES;
    return true;
  }

  private boolean whole() {
    return decoded.size() >= channels()
        && decoded.stream().allMatch(channel -> channel.length == FRAME_SAMPLES);
  }

  @Override
  public Optional<String> warning() {
    List<String> words = new ArrayList<>();
    double rate = sampleRate();
    if (sound.startTicks().isEmpty()) {
      words.add(Wording.of("files.mp4.start"));
    }
    if (cutShort) {
      words.add(SoundFiles.cutShort(framesInAll / rate, (framesInAll - framesLeft) / rate));
    }
    if (lost > 0) {
      words.add(
          Wording.counted(
              "files.aac.lost",
              lost,
              lost,
              nextFrame,
              Wording.fixed(1000 * FRAME_SAMPLES / rate, 0)));
    }
    return words.isEmpty() ? Optional.empty() : Optional.of(path + ": " + String.join("; ", words));
  }

  @Override
  public void close() throws IOException {
    file.close();
  }
}
