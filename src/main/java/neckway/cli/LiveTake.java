package neckway.cli;

import java.util.Arrays;
import java.util.Optional;
import neckway.file.WavWriter;
import neckway.neck.BadInput;
import neckway.sound.Capture;

/**
 * The take as it grows: every captured sample is written to its file, if one is wanted, and kept
 * here until a run takes it. What is kept is what is written, to the bit.
 */
final class LiveTake {
  private final Capture in;
  private final WavWriter writer;
  private final float[] block = new float[2048];
  private float[] kept = new float[1 << 19];
  private Optional<String> problem = Optional.empty();
  private int length;
  private long frames;

  /**
   * @param writer where the take is saved, or null
   */
  LiveTake(Capture in, WavWriter writer) {
    this.in = in;
    this.writer = writer;
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
    if (writer != null && problem.isEmpty()) {
      try {
        writer.write(block, 0, got);
      } catch (BadInput e) {
        problem = Optional.of(e.getMessage());
        return false;
      }
    }
    if (length + got > kept.length) {
      kept = Arrays.copyOf(kept, 2 * kept.length);
    }
    System.arraycopy(block, 0, kept, length, got);
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

  /** Frames since the start. */
  long frames() {
    return frames;
  }

  double seconds() {
    return frames / in.sampleRate();
  }
}
