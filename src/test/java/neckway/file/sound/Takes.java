package neckway.file.sound;

import java.nio.file.Path;
import java.util.Arrays;

/** Help for tests that read recordings. */
final class Takes {
  private Takes() {}

  /** A whole take at once. */
  static float[] all(Path path, Channel channel) {
    float[] all = new float[1 << 16];
    int length = 0;
    try (TakeReader reader = TakeReader.open(path, channel)) {
      float[] buffer = new float[777];
      for (int got = reader.read(buffer); got > 0; got = reader.read(buffer)) {
        if (length + got > all.length) {
          all = Arrays.copyOf(all, 2 * all.length);
        }
        System.arraycopy(buffer, 0, all, length, got);
        length += got;
      }
    }
    return Arrays.copyOf(all, length);
  }
}
