package neckway.live;

import java.util.Arrays;
import java.util.Optional;
import neckway.file.sound.WavWriter;
import neckway.neck.BadInput;
import neckway.sound.Capture;

/**
 * The take as it grows: every captured sample is written to its file, if one is wanted, and kept
 * here until a run takes it. What is kept is what is written, to the bit.
 */
public final class LiveTake {
  /** A crash loses no more than this of the take, and what the disk is about to write. */
  private static final double FLUSH_SECONDS = 0.25;

  private final Capture in;
  private final Optional<WavWriter> writer;
  private final float[] block = new float[2048];
  private float[] kept = new float[1 << 19];
  private Optional<String> problem = Optional.empty();
  private final long firstFrame;
  private int length;
  private long frames;
  private long flushedAt;
  private float peak;

  /** A take from the first frame that is captured on. */
  public LiveTake(Capture in, Optional<WavWriter> writer) {
    this(in, writer, 0);
  }

  /**
   * @param writer where the take is saved, if it is
   * @param firstFrame how many captured frames were read before this take
   */
  LiveTake(Capture in, Optional<WavWriter> writer, long firstFrame) {
    this.in = in;
    this.writer = writer;
    this.firstFrame = firstFrame;
  }

  /** Why the take can be saved no further, such as a full disk; it should end then. */
  Optional<String> problem() {
    return problem;
  }

  /** Takes what has come; true if anything has. */
  boolean read() {
    int got = in.read(block);
    if (got == 0) {
      return false;
    }
    if (writer.isPresent() && problem.isEmpty()) {
      try {
        writer.get().write(block, 0, got);
        if (frames - flushedAt >= FLUSH_SECONDS * in.sampleRate()) {
          flushedAt = frames;
          writer.get().flush();
        }
      } catch (BadInput e) {
        problem = Optional.of(e.getMessage());
        return false;
      }
    }
    if (length + got > kept.length) {
      kept = Arrays.copyOf(kept, 2 * kept.length);
    }
    System.arraycopy(block, 0, kept, length, got);
    for (int i = 0; i < got; i++) {
      peak = Math.max(peak, Math.abs(block[i]));
    }
    length += got;
    frames += got;
    return true;
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

  /** How many captured frames were read before this take. */
  long firstFrame() {
    return firstFrame;
  }

  /** Frames since the start. */
  public long frames() {
    return frames;
  }

  double seconds() {
    return frames / in.sampleRate();
  }
}
