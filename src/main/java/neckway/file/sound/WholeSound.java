package neckway.file.sound;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import neckway.neck.BadInput;
import neckway.words.Wording;

/**
 * A recording held whole, its channels mixed.
 *
 * @param samples full scale -1 to 1
 * @param sampleRate Hz
 */
public record WholeSound(float[] samples, int sampleRate) {
  /** No louder than this everywhere is silence, full scale 1: under the last of 16 bits. */
  private static final float SILENCE = 1e-5f;

  private static final int BLOCK_FRAMES = 4096;
  private static final int FIRST_ROOM = 1 << 20;

  /** How long it is. */
  public double seconds() {
    return samples.length / (double) sampleRate;
  }

  /**
   * Reads one.
   *
   * @param mostMinutes that it may last
   * @throws BadInput where it cannot be read, is longer, or is silent
   */
  public static WholeSound read(Path file, int mostMinutes) {
    return read(file, mostMinutes, share -> {});
  }

  /**
   * The same, telling how far it is.
   *
   * @param progress told in the calling thread the share that is read, empty where the file does
   *     not say how long it is
   * @throws BadInput where it cannot be read, is longer, or is silent
   */
  public static WholeSound read(Path file, int mostMinutes, Consumer<OptionalDouble> progress) {
    try (TakeReader reader = TakeReader.open(file, Channel.MIX)) {
      int most = mostMinutes * 60 * reader.sampleRate();
      float[] samples = new float[(int) Math.min(most, reader.frames().orElse(FIRST_ROOM))];
      float[] block = new float[BLOCK_FRAMES];
      int count = 0;
      for (int got = reader.read(block); got > 0; got = reader.read(block)) {
        if (count + got > most) {
          throw new BadInput(Wording.of("files.sound.long", file, mostMinutes));
        }
        if (count + got > samples.length) {
          samples = Arrays.copyOf(samples, Math.min(most, Math.max(2 * count, count + got)));
        }
        System.arraycopy(block, 0, samples, count, got);
        count += got;
        progress.accept(share(count, reader));
      }
      WholeSound whole = new WholeSound(Arrays.copyOf(samples, count), reader.sampleRate());
      if (whole.isSilent()) {
        throw new BadInput(Wording.of("files.sound.silent", file));
      }
      return whole;
    }
  }

  private static OptionalDouble share(int count, TakeReader reader) {
    return reader.frames().isPresent()
        ? OptionalDouble.of(Math.min(1, (double) count / reader.frames().getAsLong()))
        : OptionalDouble.empty();
  }

  private boolean isSilent() {
    for (float sample : samples) {
      if (Math.abs(sample) > SILENCE) {
        return false;
      }
    }
    return true;
  }
}
