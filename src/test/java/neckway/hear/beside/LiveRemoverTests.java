package neckway.hear.beside;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Noise that comes over a way of three taps, with and without a player. */
class LiveRemoverTests {
  private static final int RATE = 48_000;
  private static final int FRAMES = 8 * RATE;
  private static final double BEGINS = 3;

  private final float[] played = noise(1, 0.1, FRAMES + RATE);

  private static float[] noise(long seed, double level, int frames) {
    Random random = new Random(seed);
    float[] x = new float[frames];
    for (int i = 0; i < frames; i++) {
      x[i] = (float) (level * random.nextGaussian());
    }
    return x;
  }

  private float[] leak() {
    float[] leak = new float[FRAMES];
    for (int i = 2000; i < FRAMES; i++) {
      leak[i] = 0.3f * played[i - 100] - 0.2f * played[i - 700] + 0.1f * played[i - 2000];
    }
    return leak;
  }

  /** A tone that begins at the first beat. */
  private static float[] player() {
    float[] tone = noise(2, 1e-4, FRAMES);
    for (int i = (int) (BEGINS * RATE); i < FRAMES; i++) {
      tone[i] += (float) (0.3 * Math.sin(2 * Math.PI * 220 * i / RATE));
    }
    return tone;
  }

  private static float[] sum(float[] a, float[] b) {
    float[] sum = a.clone();
    for (int i = 0; i < sum.length; i++) {
      sum[i] += b[i];
    }
    return sum;
  }

  private LiveRemover remover() {
    return new LiveRemover(
        RATE,
        (frame, into) -> {
          for (int i = 0; i < into.length; i++) {
            int at = (int) frame + i;
            into[i] = at >= 0 && at < played.length ? played[at] : 0;
          }
        });
  }

  private static float[] left(LiveRemover remover, float[] take, int blockFrames) {
    float[] left = new float[take.length];
    int[] count = new int[1];
    LiveRemover.Sink sink =
        (samples, offset, length) -> {
          System.arraycopy(samples, offset, left, count[0], length);
          count[0] += length;
        };
    remover.learn(take, take.length, BEGINS);
    for (int from = 0; from < take.length; from += blockFrames) {
      remover.process(take, from, Math.min(blockFrames, take.length - from), sink);
      assertThat(from + blockFrames - count[0])
          .as("frames late")
          .isLessThanOrEqualTo(Math.max(blockFrames, remover.delayFrames()));
    }
    remover.finish(sink);
    assertThat(count[0]).isEqualTo(take.length);
    return left;
  }

  private static double db(float[] x, float[] y, int from) {
    double sum = 0;
    for (int i = from; i < x.length; i++) {
      double apart = x[i] - y[i];
      sum += apart * apart;
    }
    return 10 * Math.log10(sum / (x.length - from));
  }

  @Test
  void whatIsPlayedIsTakenOutAndThePlayerIsLeft() {
    LiveRemover remover = remover();
    float[] left = left(remover, sum(player(), leak()), 512);
    assertThat(remover.takesOut()).isTrue();
    int from = (int) (BEGINS * RATE) + RATE / 2;
    double before = db(leak(), new float[FRAMES], from);
    assertThat(before - db(left, player(), from)).as("leak less by, dB").isGreaterThan(20);
  }

  @Test
  void theSameForBlocksOfAnySize() {
    float[] take = sum(player(), leak());
    float[] one = left(remover(), take, 512);
    assertThat(left(remover(), take, 77)).isEqualTo(one);
    assertThat(left(remover(), take, 10_007)).isEqualTo(one);
  }

  @Test
  void onHeadphonesNothingIsChangedAndNothingIsLate() {
    LiveRemover remover = remover();
    float[] take = player();
    assertThat(left(remover, take, 512)).isEqualTo(take);
    assertThat(remover.takesOut()).isFalse();
  }
}
