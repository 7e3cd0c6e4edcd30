package neckway.recording;

import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.function.BooleanSupplier;
import neckway.file.sound.TakeReader;

/** Feeds a recording to whoever hears it, block by block, in constant memory. */
public final class TakeFeed {
  /** Hears the sound. */
  @FunctionalInterface
  public interface Sink {
    /** Takes samples, mono, full scale -1 to 1; valid until this returns. */
    void feed(float[] samples, int offset, int length);
  }

  /** Told how far it is, after each block. */
  @FunctionalInterface
  public interface Progress {
    /**
     * @param seconds heard
     * @param share of the whole, 0 to 1; empty where the file does not tell its length
     */
    void at(double seconds, OptionalDouble share);
  }

  private static final int BLOCK_FRAMES = 4096;

  private TakeFeed() {}

  /** Feeds all of it. */
  public static void feed(TakeReader reader, Sink sink) {
    feed(reader, sink, (seconds, share) -> {}, () -> false);
  }

  /**
   * Feeds it.
   *
   * @param reader at its beginning
   * @param cancelled asked before each block; true ends it
   * @return whether all of it was fed
   * @throws neckway.neck.BadInput where it cannot be read on, in one line
   */
  public static boolean feed(
      TakeReader reader, Sink sink, Progress progress, BooleanSupplier cancelled) {
    OptionalLong whole = reader.frames();
    float[] block = new float[BLOCK_FRAMES];
    long frames = 0;
    for (int got = reader.read(block); got > 0; got = reader.read(block)) {
      if (cancelled.getAsBoolean()) {
        return false;
      }
      sink.feed(block, 0, got);
      frames += got;
      progress.at(frames / (double) reader.sampleRate(), share(frames, whole));
    }
    return true;
  }

  /**
   * Feeds sound that is held whole.
   *
   * @return whether all of it was fed
   */
  static boolean feed(TakeAlone take, Sink sink, Progress progress, BooleanSupplier cancelled) {
    float[] samples = take.samples();
    OptionalLong whole = OptionalLong.of(samples.length);
    for (int from = 0; from < samples.length; from += BLOCK_FRAMES) {
      if (cancelled.getAsBoolean()) {
        return false;
      }
      int length = Math.min(BLOCK_FRAMES, samples.length - from);
      sink.feed(samples, from, length);
      long frames = (long) from + length;
      progress.at(frames / (double) take.sampleRate(), share(frames, whole));
    }
    return true;
  }

  private static OptionalDouble share(long frames, OptionalLong whole) {
    return whole.isPresent() && whole.getAsLong() > 0
        ? OptionalDouble.of(Math.min(1, frames / (double) whole.getAsLong()))
        : OptionalDouble.empty();
  }
}
