package neckway.live;

import java.nio.file.Path;
import java.util.Optional;
import neckway.hear.beside.LiveRemover;
import neckway.neck.BadInput;
import neckway.run.Run;

/**
 * What is played out while a take is recorded: taken out of what the run hears, and kept in a file
 * beside the take, on the take's own frames, so that a review can take it out again.
 */
final class PlayedOut implements AutoCloseable {
  private static final String WAV = ".wav";
  private static final int BLOCK_FRAMES = 1024;

  private final LiveRemover.Known known;
  private final LiveRemover remover;
  private final LiveTake copy;
  private final int aheadFrames;
  private final float[] block = new float[BLOCK_FRAMES];
  private long heardFrames;

  /**
   * @param known what is played out, on the take's frames
   * @param file where it is kept, if it is
   * @throws BadInput where nothing can be written there
   */
  PlayedOut(double sampleRate, LiveRemover.Known known, Optional<Path> file) {
    this.known = known;
    remover = new LiveRemover(sampleRate, known);
    aheadFrames = LiveRemover.aheadFrames(sampleRate);
    copy = new LiveTake(sampleRate, file, 0);
  }

  /** The file that goes with a take: {@code NAME.backing.wav} with {@code NAME.wav}. */
  static Path file(Path take) {
    String name = take.getFileName().toString();
    String bare = name.endsWith(WAV) ? name.substring(0, name.length() - WAV.length()) : name;
    return take.resolveSibling(bare + ".backing" + WAV);
  }

  /** The first beat is known: until then nobody played, so the way is learnt from that. */
  void begin(float[] take, int length, double firstBeatSeconds) {
    remover.learn(take, length, firstBeatSeconds);
  }

  /** Gives the run what is left of what has come. */
  void feed(float[] samples, int length, Run run) {
    remover.process(samples, 0, length, run::feed);
    heardFrames += length;
    copyUntil(heardFrames);
  }

  /** Gives the run the last of it. */
  void finish(Run run) {
    remover.finish(run::feed);
    // as far as it was asked for
    copyUntil(heardFrames + aheadFrames + BLOCK_FRAMES);
  }

  private void copyUntil(long frames) {
    while (copy.frames() + BLOCK_FRAMES <= frames && copy.problem().isEmpty()) {
      known.read(copy.frames(), block);
      copy.add(block, block.length);
      copy.taken();
    }
  }

  /** Whether it was heard, and so taken out. */
  boolean isTakenOut() {
    return remover.takesOut();
  }

  /**
   * Puts its file in its place.
   *
   * @return where it is, if it was to be kept
   */
  Optional<Path> keep() {
    return copy.keep();
  }

  void drop() {
    copy.drop();
  }

  @Override
  public void close() {
    copy.close();
  }
}
