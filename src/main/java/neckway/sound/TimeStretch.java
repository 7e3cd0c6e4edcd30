package neckway.sound;

import java.util.Arrays;

/**
 * Slows sound down and leaves its pitch, by overlapping stretches where they are most alike:
 * Verhelst and Roelands, "An overlap-add technique based on waveform similarity (WSOLA)", ICASSP
 * 1993. Likeness is the normalised correlation over the overlap; the first stretch is the sound's
 * own beginning, so that an attack there stays where it is.
 */
public final class TimeStretch {
  private static final double SEQUENCE_SECONDS = 0.060;
  private static final double OVERLAP_SECONDS = 0.015;
  private static final double SEEK_SECONDS = 0.010;
  private static final int COARSE = 3;

  private TimeStretch() {}

  /**
   * @param sound mono
   * @param sampleRate frames a second
   * @param speed 0.25 to 1; 0.5 is half as fast, so twice as long
   * @return the same sound, slower
   */
  public static float[] slowed(float[] sound, double sampleRate, double speed) {
    if (!(speed >= 0.25 && speed <= 1)) {
      throw new IllegalArgumentException("speed " + speed + ": 0.25 to 1");
    }
    int sequence = (int) (SEQUENCE_SECONDS * sampleRate);
    int overlap = (int) (OVERLAP_SECONDS * sampleRate);
    int seek = (int) (SEEK_SECONDS * sampleRate);
    if (speed == 1 || sound.length < 2 * sequence) {
      return sound.clone();
    }
    float[] out = new float[(int) (sound.length / speed)];
    int hop = sequence - overlap;
    System.arraycopy(sound, 0, out, 0, Math.min(sequence, out.length));
    int from = 0;
    int at = hop;
    while (at + sequence < out.length) {
      int goesOn = from + hop;
      int wanted = (int) Math.round(at * speed);
      int next = alike(sound, goesOn, wanted, seek, overlap, sequence);
      if (next < 0) {
        break;
      }
      for (int i = 0; i < overlap; i++) {
        float share = (i + 0.5f) / overlap;
        out[at + i] = (1 - share) * sound[goesOn + i] + share * sound[next + i];
      }
      System.arraycopy(sound, next + overlap, out, at + overlap, sequence - overlap);
      from = next;
      at += hop;
    }
    return Arrays.copyOf(out, Math.min(out.length, at + overlap));
  }

  /** The start near {@code wanted} whose beginning is most like what would have gone on. */
  private static int alike(
      float[] sound, int goesOn, int wanted, int seek, int overlap, int sequence) {
    int least = Math.max(0, wanted - seek);
    int most = Math.min(sound.length - sequence, wanted + seek);
    if (goesOn + overlap > sound.length || least > most) {
      return -1;
    }
    int best = best(sound, goesOn, least, most, overlap, COARSE);
    return best(
        sound, goesOn, Math.max(least, best - COARSE), Math.min(most, best + COARSE), overlap, 1);
  }

  private static int best(float[] sound, int goesOn, int from, int to, int overlap, int stride) {
    int best = from;
    double most = Double.NEGATIVE_INFINITY;
    for (int start = from; start <= to; start += stride) {
      double product = 0;
      double energy = 1e-9;
      for (int i = 0; i < overlap; i += stride) {
        product += sound[goesOn + i] * sound[start + i];
        energy += sound[start + i] * sound[start + i];
      }
      double like = product / Math.sqrt(energy);
      if (like > most) {
        most = like;
        best = start;
      }
    }
    return best;
  }
}
