package neckway.file.sound;

import java.io.Closeable;
import java.io.IOException;
import java.util.Optional;
import java.util.OptionalLong;

/** The sound of one file as interleaved floats, read once from its start to its end. */
interface SoundSource extends Closeable {
  /** Frames a second. */
  int sampleRate();

  /** 1 or more. */
  int channels();

  /** Frames in the whole file, where that is known before reading it. */
  OptionalLong frames();

  /**
   * Reads on.
   *
   * @param interleaved room for {@code frames} times {@link #channels()} samples
   * @return frames read; 0 at the end and only there
   * @throws neckway.neck.BadInput for sound that is spoilt
   */
  int read(float[] interleaved, int frames) throws IOException;

  /** What a person should know about a file that could be read all the same, so far. */
  Optional<String> warning();
}
