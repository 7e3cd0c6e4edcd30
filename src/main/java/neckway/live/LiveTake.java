package neckway.live;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import neckway.file.sound.WavWriter;
import neckway.neck.BadInput;

/**
 * The take as it grows: every captured sample is written to its file, if one is wanted, and kept
 * here until a run takes it. What is kept is what is written, to the bit.
 *
 * <p>Its file is whole at any time: a program that is killed leaves it under the part's name of
 * {@link WavWriter}, less what came in the last quarter of a second.
 */
final class LiveTake implements AutoCloseable {
  /** A crash loses no more than this of the take, and what the disk is about to write. */
  private static final double FLUSH_SECONDS = 0.25;

  private final double sampleRate;
  private final long firstFrame;
  private final Optional<WavWriter> writer;
  private final Optional<Safekeeping> safekeeping;
  private final Optional<Path> file;
  private float[] kept = new float[1 << 19];
  private Optional<String> problem = Optional.empty();
  private int length;
  private long frames;
  private long flushedAt;
  private float peak;
  private boolean settled;

  /**
   * @param sampleRate frames a second, a whole number
   * @param file where the take is saved, if it is
   * @param firstFrame how many captured frames were taken before this take
   * @throws BadInput where nothing can be written there
   */
  LiveTake(double sampleRate, Optional<Path> file, long firstFrame) {
    this.sampleRate = sampleRate;
    this.firstFrame = firstFrame;
    this.file = file;
    int rateHz = (int) Math.round(sampleRate);
    writer = file.map(f -> new WavWriter(f, rateHz, WavWriter.Coding.PCM_16));
    safekeeping = writer.map(Safekeeping::new);
  }

  /** Why the take can be saved no further, such as a full disk; it should end then. */
  Optional<String> problem() {
    return problem;
  }

  /** Takes sound; false where it can be saved no further, and then it is not taken. */
  boolean add(float[] samples, int count) {
    if (problem.isPresent() || !saved(samples, count)) {
      return false;
    }
    if (length + count > kept.length) {
      kept = Arrays.copyOf(kept, 2 * kept.length);
    }
    System.arraycopy(samples, 0, kept, length, count);
    for (int i = 0; i < count; i++) {
      peak = Math.max(peak, Math.abs(samples[i]));
    }
    length += count;
    frames += count;
    return true;
  }

  private boolean saved(float[] samples, int count) {
    if (writer.isEmpty()) {
      return true;
    }
    try {
      writer.get().write(samples, 0, count);
      if (frames - flushedAt >= FLUSH_SECONDS * sampleRate) {
        flushedAt = frames;
        writer.get().flush();
      }
      return true;
    } catch (BadInput e) {
      problem = Optional.of(e.getMessage());
      return false;
    }
  }

  /** Samples not yet taken; valid up to {@link #length()}. */
  float[] kept() {
    return kept;
  }

  int length() {
    return length;
  }

  /** Forgets what was kept. */
  void taken() {
    length = 0;
  }

  /** The highest sample since this was last asked, 0 to 1. */
  float peak() {
    float highest = peak;
    peak = 0;
    return highest;
  }

  double sampleRate() {
    return sampleRate;
  }

  /** How many captured frames were taken before this take. */
  long firstFrame() {
    return firstFrame;
  }

  /** Frames since its start. */
  long frames() {
    return frames;
  }

  double seconds() {
    return frames / sampleRate;
  }

  /**
   * Puts its file in its place, where there is one and anything is in it. What the disk no longer
   * takes is left out, and {@link #problem()} says so.
   *
   * @return where it is
   * @throws BadInput where it cannot be put there; the sound is then under the part's name
   */
  Optional<Path> keep() {
    if (writer.isEmpty() || settled || frames == 0) {
      return Optional.empty();
    }
    settled = true;
    try {
      writer.get().flush();
    } catch (BadInput e) {
      problem = Optional.of(problem.orElse(e.getMessage()));
    }
    writer.get().finish();
    return file;
  }

  /** Gives it up: its file, where there is one, is deleted. */
  void drop() {
    settled = true;
    writer.ifPresent(WavWriter::close);
  }

  /** Keeps what was neither kept nor dropped, as when a fault of the program ends a round. */
  @Override
  public void close() {
    safekeeping.ifPresent(Safekeeping::close);
    try {
      keep();
    } finally {
      drop();
    }
  }
}
