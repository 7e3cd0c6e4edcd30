package neckway.file.sound;

import java.io.IOException;
import java.util.Arrays;

/**
 * How much of each channel goes into the mono sound.
 *
 * <p>For {@link Channel#AUTO} the channels' levels are measured over the first {@link
 * #MEASURED_SECONDS} of the file before it is read from its start again, so the answer is the same
 * each time and never changes within a take. A channel more than {@link #WEAK_DB} under the
 * strongest is left out. If the channels left cancel each other (one with its phase turned), the
 * strongest alone is taken.
 */
final class ChannelWeights {
  /** How much of the file is measured, seconds. */
  static final int MEASURED_SECONDS = 600;

  /** A channel this far under the strongest carries no guitar of its own, dB. */
  static final double WEAK_DB = 20;

  /** A mix that falls this far under its channels' mean power is their cancelling out, dB. */
  static final double CANCELLED_DB = 6;

  private ChannelWeights() {}

  /**
   * The weights for a wish; they sum to 1.
   *
   * @param source at its start; read on by {@link Channel#AUTO} if it has several channels
   */
  static float[] of(Channel wish, SoundSource source) throws IOException {
    int channels = source.channels();
    float[] weights = new float[channels];
    switch (wish) {
      case LEFT -> weights[0] = 1;
      case RIGHT -> weights[Math.min(1, channels - 1)] = 1;
      case MIX -> Arrays.fill(weights, 1f / channels);
      case AUTO -> {
        if (channels == 1) {
          weights[0] = 1;
        } else {
          return measured(source);
        }
      }
    }
    return weights;
  }

  private static float[] measured(SoundSource source) throws IOException {
    int channels = source.channels();
    double[][] products = new double[channels][channels];
    float[] block = new float[4096 * channels];
    long left = (long) MEASURED_SECONDS * source.sampleRate();
    for (int got = 1; left > 0 && got > 0; left -= got) {
      got = source.read(block, (int) Math.min(left, 4096));
      for (int f = 0; f < got; f++) {
        for (int a = 0; a < channels; a++) {
          for (int b = a; b < channels; b++) {
            products[a][b] += (double) block[f * channels + a] * block[f * channels + b];
          }
        }
      }
    }
    return choose(products);
  }

  private static float[] choose(double[][] products) {
    int channels = products.length;
    int strongest = 0;
    for (int c = 1; c < channels; c++) {
      strongest = products[c][c] > products[strongest][strongest] ? c : strongest;
    }
    double least = products[strongest][strongest] * Math.pow(10, -WEAK_DB / 10);
    boolean[] kept = new boolean[channels];
    int count = 0;
    for (int c = 0; c < channels; c++) {
      kept[c] = products[c][c] >= least;
      count += kept[c] ? 1 : 0;
    }
    double own = 0;
    double mixed = 0;
    for (int a = 0; a < channels; a++) {
      for (int b = a; b < channels; b++) {
        if (kept[a] && kept[b]) {
          mixed += (a == b ? 1 : 2) * products[a][b] / ((double) count * count);
          own += a == b ? products[a][a] / count : 0;
        }
      }
    }
    float[] weights = new float[channels];
    boolean cancelled = mixed < own * Math.pow(10, -CANCELLED_DB / 10) / Math.max(1, count / 2.0);
    for (int c = 0; c < channels; c++) {
      weights[c] = cancelled ? (c == strongest ? 1 : 0) : (kept[c] ? 1f / count : 0);
    }
    return weights;
  }
}
