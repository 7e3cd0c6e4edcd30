package neckway.desk.play;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import neckway.band.BeatFinder;
import neckway.file.sound.WholeSound;
import neckway.sound.Levelling;

/**
 * A recording that was read, at the one loudness of all playback.
 *
 * @param file where it was read
 * @param changed when that file was last written
 * @param level mono
 * @param sampleRate frames a second
 * @param beats looks for its beat
 */
record LoadedRecording(
    Path file, Optional<FileTime> changed, float[] level, int sampleRate, BeatFinder beats) {
  /** Longer ones are refused. */
  static final int MOST_MINUTES = 15;

  /**
   * Reads one, which takes a second or so a minute of it.
   *
   * @param progress told the share that is read in the calling thread, empty where it is not known
   * @throws neckway.neck.BadInput in one line where it cannot be used
   */
  static LoadedRecording read(Path file, Consumer<OptionalDouble> progress) {
    Optional<FileTime> changed = changedAt(file);
    WholeSound sound = WholeSound.read(file, MOST_MINUTES, progress);
    progress.accept(OptionalDouble.empty());
    return new LoadedRecording(
        file,
        changed,
        Levelling.levelled(sound.samples(), sound.sampleRate()),
        sound.sampleRate(),
        new BeatFinder(sound.samples(), sound.sampleRate()));
  }

  /** Whether it is what lies there now. */
  boolean isStill(Path other) {
    return file.equals(other) && changed.isPresent() && changed.equals(changedAt(other));
  }

  double seconds() {
    return level.length / (double) sampleRate;
  }

  private static Optional<FileTime> changedAt(Path file) {
    try {
      return Optional.of(Files.getLastModifiedTime(file));
    } catch (IOException e) {
      // reading it will say what is amiss
      return Optional.empty();
    }
  }
}
