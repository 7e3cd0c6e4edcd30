package neckway.sound;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.OptionalDouble;
import neckway.file.sound.Channel;
import neckway.file.sound.TakeReader;

/**
 * Whether a take went through the virtual devices whole: on a busy machine a player or the server
 * may leave a hole or put one in, and then what was captured is not what was played. Told from the
 * two sounds alone, by correlation, never from what was heard in them.
 */
public final class PlayedWhole {
  private static final double PIECE_SECONDS = 0.1;
  private static final double LEAST_LIKENESS = 0.8;
  private static final double LEAST_RMS = 0.01;

  /** Long enough for several notes: one alone looks the same a period later. */
  private static final int BEGINNING_PIECES = 6;

  private static final int PLAY_FRAMES = 3;

  private final float[] captured;
  private final double rate;

  public PlayedWhole(Path captured) {
    try (TakeReader reader = TakeReader.open(captured, Channel.AUTO)) {
      rate = reader.sampleRate();
      this.captured = samples(reader);
    }
  }

  public static float[] samples(TakeReader reader) {
    float[] all = new float[1 << 20];
    float[] block = new float[4096];
    int length = 0;
    for (int got = reader.read(block); got > 0; got = reader.read(block)) {
      all = length + got > all.length ? Arrays.copyOf(all, 2 * all.length) : all;
      System.arraycopy(block, 0, all, length, got);
      length += got;
    }
    return Arrays.copyOf(all, length);
  }

  /**
   * Looks for a take in what was captured.
   *
   * @return seconds of the take at which it first stands elsewhere than its beginning does; empty
   *     where all of it, as far as it was captured, stands in one place
   */
  public OptionalDouble brokenAt(Path take) {
    float[] played = played(take);
    int piece = (int) (PIECE_SECONDS * rate);
    int first = firstSound(played, piece);
    int lag = find(played, first, BEGINNING_PIECES * piece);
    for (int at = first; at + piece <= played.length; at += piece) {
      if (at + lag + piece + PLAY_FRAMES > captured.length) {
        break;
      }
      double best = -1;
      for (int off = -PLAY_FRAMES; off <= PLAY_FRAMES; off++) {
        best = Math.max(best, likeness(played, at, lag + off, piece, 1));
      }
      if (best < LEAST_LIKENESS && rms(played, at, piece) > LEAST_RMS) {
        return OptionalDouble.of(at / rate);
      }
    }
    return OptionalDouble.empty();
  }

  /**
   * Where in what was captured a take begins, as its first notes have it.
   *
   * @return seconds of the captured sound at which the take's first sample stands, silence included
   */
  public double beganAt(Path take) {
    float[] played = played(take);
    int piece = (int) (PIECE_SECONDS * rate);
    return find(played, firstSound(played, piece), BEGINNING_PIECES * piece) / rate;
  }

  /** The take at the rate of what was captured. */
  private float[] played(Path take) {
    try (TakeReader reader = TakeReader.open(take, Channel.AUTO)) {
      return resampled(samples(reader), rate / reader.sampleRate());
    }
  }

  private static int firstSound(float[] played, int piece) {
    int first = 0;
    while (rms(played, first, piece) < 3 * LEAST_RMS) {
      first += piece;
    }
    return first;
  }

  private int find(float[] played, int from, int piece) {
    int best = 0;
    double most = -2;
    for (int lag = -from; lag + from + piece < captured.length; lag += 2) {
      double like = likeness(played, from, lag, piece, 16);
      if (like > most) {
        most = like;
        best = lag;
      }
    }
    return best;
  }

  private double likeness(float[] played, int from, int lag, int length, int stride) {
    double product = 1e-12;
    double mine = 1e-12;
    double theirs = 1e-12;
    for (int i = from; i < from + length; i += stride) {
      int j = i + lag;
      if (j < 0 || j >= captured.length) {
        continue;
      }
      product += played[i] * captured[j];
      mine += played[i] * played[i];
      theirs += captured[j] * captured[j];
    }
    return product / Math.sqrt(mine * theirs);
  }

  private static double rms(float[] x, int from, int length) {
    double sum = 0;
    for (int i = from; i < from + length; i++) {
      sum += x[i] * x[i];
    }
    return Math.sqrt(sum / length);
  }

  private static float[] resampled(float[] x, double ratio) {
    float[] y = new float[(int) ((x.length - 2) * ratio)];
    for (int i = 0; i < y.length; i++) {
      double at = i / ratio;
      int j = (int) at;
      y[i] = (float) (x[j] + (at - j) * (x[j + 1] - x[j]));
    }
    return y;
  }
}
