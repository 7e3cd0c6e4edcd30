package neckway.hear.beside;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PathFilterTests {
  private static final int BLOCK = 64;

  private static float[] noise(int frames, long seed) {
    Random random = new Random(seed);
    float[] x = new float[frames];
    for (int i = 0; i < frames; i++) {
      x[i] = (float) random.nextGaussian();
    }
    return x;
  }

  /** The way by hand: 0.5 after 3 frames and -0.25 after 100, which is in the second block. */
  private static float[] leak(float[] x) {
    float[] y = new float[x.length];
    for (int i = 0; i < x.length; i++) {
      y[i] = (i >= 3 ? 0.5f * x[i - 3] : 0) - (i >= 100 ? 0.25f * x[i - 100] : 0);
    }
    return y;
  }

  private static double power(float[] x, int from, int to) {
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum += x[i] * x[i];
    }
    return sum / (to - from);
  }

  @Test
  void theWayIsLearntAndWhatComesOverItIsTold() {
    float[] known = noise(BLOCK * 400, 1);
    float[] take = leak(known);
    PathFilter filter = new PathFilter(BLOCK, 3);
    float[] told = new float[take.length];
    for (int pass = 0; pass < 4; pass++) {
      filter.rewind();
      filter.doubt(1, 0.5);
      for (int from = 0; from < take.length; from += BLOCK) {
        filter.process(take, known, from);
        filter.leak(told, from);
      }
    }
    for (int i = 0; i < take.length; i++) {
      told[i] -= take[i];
    }
    assertThat(power(told, 0, take.length)).isLessThan(0.03 * power(take, 0, take.length));
  }

  @Test
  void whatIsLouderThanTheLeakIsNotTakenOutWithIt() {
    float[] known = noise(BLOCK * 400, 1);
    float[] own = noise(BLOCK * 400, 2);
    float[] leak = leak(known);
    float[] take = new float[leak.length];
    for (int i = 0; i < take.length; i++) {
      take[i] = leak[i] + 4 * own[i];
    }
    PathFilter filter = new PathFilter(BLOCK, 3);
    float[] told = new float[take.length];
    for (int pass = 0; pass < 3; pass++) {
      filter.rewind();
      filter.doubt(0.3 * Math.pow(0.1, pass), 0.5);
      for (int from = 0; from < take.length; from += BLOCK) {
        filter.process(take, known, from);
        filter.leak(told, from);
      }
    }
    float[] off = new float[take.length];
    for (int i = 0; i < off.length; i++) {
      off[i] = told[i] - leak[i];
    }
    // 192 coefficients from 25,600 samples, with noise 17 dB over the leak: -4 dB at the very best
    assertThat(power(off, 0, off.length)).isLessThan(0.6 * power(leak, 0, leak.length));
  }

  @Test
  void silenceLeavesTheTakeAsItIs() {
    float[] take = noise(BLOCK * 10, 3);
    float[] told = new float[take.length];
    PathFilter filter = new PathFilter(BLOCK, 2);
    filter.doubt(1, 0.5);
    for (int from = 0; from < take.length; from += BLOCK) {
      filter.process(take, new float[take.length], from);
      filter.leak(told, from);
    }
    assertThat(power(told, 0, told.length)).isZero();
  }

  @Test
  void nothingIsAllocatedWhileItWorks() {
    float[] known = noise(BLOCK * 100, 1);
    float[] take = leak(known);
    PathFilter filter = new PathFilter(BLOCK, 3);
    filter.doubt(1, 0.5);
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    long least = Long.MAX_VALUE;
    for (int round = 0; round < 20; round++) {
      long before = threads.getCurrentThreadAllocatedBytes();
      for (int from = 0; from < take.length; from += BLOCK) {
        filter.process(take, known, from);
      }
      least = Math.min(least, threads.getCurrentThreadAllocatedBytes() - before);
    }
    assertThat(least).isZero();
  }

  @Test
  void aBlockIsAPowerOfTwoAndTheWayHasAPart() {
    assertThatThrownBy(() -> new PathFilter(100, 3)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new PathFilter(2 * PathFilter.MOST_BLOCK_FRAMES, 3))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new PathFilter(64, 0)).isInstanceOf(IllegalArgumentException.class);
  }
}
