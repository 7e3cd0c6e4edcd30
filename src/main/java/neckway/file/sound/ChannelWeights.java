package neckway.file.sound;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * How much of each channel goes into the mono sound, and whether the channels hold different sound.
 *
 * <p>For {@link Channel#AUTO} the channels' levels are measured over the first {@link
 * #MEASURED_SECONDS} of the file before it is read from its start again, so the answer is the same
 * each time and never changes within a take. A channel more than {@link #WEAK_DB} under the
 * strongest is left out. If the channels left cancel each other (one with its phase turned), the
 * strongest alone is taken.
 */
record ChannelWeights(float[] weights, boolean sidesDiffer) {
  /** How much of the file is measured, seconds. */
  static final int MEASURED_SECONDS = 600;

  /** A channel this far under the strongest carries no guitar of its own, dB. */
  static final double WEAK_DB = 20;

  /** A mix that falls this far under its channels' mean power is their cancelling out, dB. */
  static final double CANCELLED_DB = 6;

  /**
   * Two channels whose levels rise and fall together less than so are of different things: the
   * correlation of the changes of their levels in decibels, block by block. Measured: 0.9 and more
   * of one guitar heard by two microphones, below 0.2 of two that play different things.
   */
  static final double ALIKE = 0.5;

  /** Blocks a second whose levels are held against each other: notes are as long and longer. */
  private static final int BLOCKS_A_SECOND = 10;

  /** Fewer blocks tell nothing of their likeness. */
  private static final int FEWEST_BLOCKS = 20;

  /** What lies further under the loudest block is no playing, dB. */
  private static final double PLAYED_DB = 40;

  /** Silence does not count, power of a block. */
  private static final double SILENCE = 1e-9;

  /**
   * The weights for a wish; they sum to 1.
   *
   * @param source at its start; read on by {@link Channel#AUTO} if it has several channels
   */
  static ChannelWeights of(Channel wish, SoundSource source) throws IOException {
    int channels = source.channels();
    float[] weights = new float[channels];
    return switch (wish) {
      case LEFT -> only(0, weights);
      case RIGHT -> only(Math.min(1, channels - 1), weights);
      case MIX -> {
        Arrays.fill(weights, 1f / channels);
        yield new ChannelWeights(weights, false);
      }
      case AUTO -> channels == 1 ? only(0, weights) : measured(source);
    };
  }

  private static ChannelWeights only(int channel, float[] weights) {
    weights[channel] = 1;
    return new ChannelWeights(weights, false);
  }

  private static ChannelWeights measured(SoundSource source) throws IOException {
    int channels = source.channels();
    double[][] products = new double[channels][channels];
    List<double[]> levels = new ArrayList<>();
    int blockFrames = source.sampleRate() / BLOCKS_A_SECOND;
    float[] block = new float[blockFrames * channels];
    long left = (long) MEASURED_SECONDS * source.sampleRate();
    for (int got = 1; left > 0 && got > 0; left -= got) {
      got = source.read(block, (int) Math.min(left, blockFrames));
      double[] before = powers(products);
      add(block, got, products);
      double[] now = powers(products);
      int frames = Math.max(1, got);
      levels.add(
          IntStream.range(0, channels)
              .mapToDouble(c -> 10 * Math.log10(SILENCE + (now[c] - before[c]) / frames))
              .toArray());
    }
    float[] weights = choose(products);
    return new ChannelWeights(weights, differ(weights, levels));
  }

  private static double[] powers(double[][] products) {
    return IntStream.range(0, products.length).mapToDouble(c -> products[c][c]).toArray();
  }

  private static void add(float[] block, int frames, double[][] products) {
    int channels = products.length;
    for (int f = 0; f < frames; f++) {
      for (int a = 0; a < channels; a++) {
        for (int b = a; b < channels; b++) {
          products[a][b] += (double) block[f * channels + a] * block[f * channels + b];
        }
      }
    }
  }

  /** Whether any two channels that are mixed rise and fall apart. */
  private static boolean differ(float[] weights, List<double[]> levels) {
    List<double[]> changes = changes(levels);
    if (levels.size() < FEWEST_BLOCKS || changes.isEmpty()) {
      return false;
    }
    for (int a = 0; a < weights.length; a++) {
      for (int b = a + 1; b < weights.length; b++) {
        if (weights[a] > 0 && weights[b] > 0 && correlation(changes, a, b) < ALIKE) {
          return true;
        }
      }
    }
    return false;
  }

  /** From block to block: two players who begin and end together have as much in common as that. */
  private static List<double[]> changes(List<double[]> levels) {
    List<double[]> changes = new ArrayList<>();
    double loudest = levels.stream().mapToDouble(ChannelWeights::highest).max().orElse(0);
    for (int i = 1; i < levels.size(); i++) {
      double[] before = levels.get(i - 1);
      double[] now = levels.get(i);
      if (Math.min(highest(before), highest(now)) < loudest - PLAYED_DB) {
        continue;
      }
      changes.add(IntStream.range(0, now.length).mapToDouble(c -> now[c] - before[c]).toArray());
    }
    return changes;
  }

  private static double highest(double[] levels) {
    return Arrays.stream(levels).max().orElseThrow();
  }

  private static double correlation(List<double[]> levels, int a, int b) {
    double meanA = levels.stream().mapToDouble(l -> l[a]).average().orElseThrow();
    double meanB = levels.stream().mapToDouble(l -> l[b]).average().orElseThrow();
    double both = 0;
    double ofA = 0;
    double ofB = 0;
    for (double[] level : levels) {
      both += (level[a] - meanA) * (level[b] - meanB);
      ofA += (level[a] - meanA) * (level[a] - meanA);
      ofB += (level[b] - meanB) * (level[b] - meanB);
    }
    return both / Math.sqrt(Math.max(Double.MIN_NORMAL, ofA * ofB));
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
