package neckway.desk.read;

import java.nio.file.Path;
import java.util.Arrays;
import neckway.file.sound.Channel;
import neckway.file.sound.TakeReader;

/**
 * A stretch of a take's sound.
 *
 * @param samples mono, -1 to 1
 * @param sampleRate frames a second
 * @param fromSeconds where in the take it begins
 */
record TakeSound(float[] samples, int sampleRate, double fromSeconds) {
  /**
   * Reads a stretch; what lies outside the take is left out.
   *
   * @throws neckway.neck.BadInput where the file cannot be read
   */
  static TakeSound read(Path file, double fromSeconds, double toSeconds) {
    try (TakeReader reader = TakeReader.open(file, Channel.AUTO)) {
      int rate = reader.sampleRate();
      long from = Math.max(0, Math.round(fromSeconds * rate));
      long to = Math.max(from, Math.round(toSeconds * rate));
      float[] kept = new float[(int) (to - from)];
      float[] block = new float[2048];
      long at = 0;
      int got = reader.read(block);
      while (got > 0 && at < to) {
        long first = Math.max(at, from);
        long last = Math.min(at + got, to);
        if (last > first) {
          System.arraycopy(
              block, (int) (first - at), kept, (int) (first - from), (int) (last - first));
        }
        at += got;
        got = at < to ? reader.read(block) : 0;
      }
      int length = (int) Math.max(0, Math.min(kept.length, at - from));
      return new TakeSound(Arrays.copyOf(kept, length), rate, (double) from / rate);
    }
  }
}
