package neckway.hear.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class LoneBurstsTests {
  private static final double RATE_HZ = 22_050;
  private static final int LENGTH = 2_600;
  private static final int MOST_SHIFT = 22;
  private static final int COMPARED = 700;

  private final LoneBursts bursts = new LoneBursts(RATE_HZ, LENGTH, MOST_SHIFT, COMPARED);

  /** A tone that dies away, begun at a part of a frame. */
  private static float[] tone(double at, double hz) {
    float[] x = new float[8_192];
    for (int i = (int) Math.ceil(at); i < x.length; i++) {
      double seconds = (i - at) / RATE_HZ;
      x[i] = (float) (Math.exp(-seconds / 0.02) * Math.sin(2 * Math.PI * hz * seconds));
    }
    return x;
  }

  /** Adds one that is found some frames away from where it is. */
  private void add(double at, double hz, int foundLate) {
    long frame = Math.round(at);
    int index = 2_000;
    bursts.add(tone(index + at - frame, hz), index + foundLate, frame + foundLate);
  }

  @Test
  void threeEvenOnesKeepABeat() {
    add(10_000, 1_400, 0);
    add(22_345.5, 1_400, 0);
    assertThat(bursts.beatFrames()).isEmpty();
    add(34_691, 1_400, 0);
    assertThat(bursts.beatFrames().orElseThrow()).isCloseTo(12_345.5, within(0.5));
  }

  /** 1,400 Hz has a period of 15.75 frames: the onset's own error is less than that. */
  @Test
  void theirOnsetsMayBeFoundFramesAway() {
    add(10_000, 2_000, 0);
    add(22_345.5, 1_400, 3);
    add(34_691, 1_400, -5);
    assertThat(bursts.beatFrames().orElseThrow()).isCloseTo(12_345.5, within(0.5));
  }

  @Test
  void unevenOnesKeepNone() {
    add(10_000, 1_400, 0);
    add(22_000, 1_400, 0);
    add(34_000 + 0.0025 * RATE_HZ, 1_400, 0);
    assertThat(bursts.beatFrames()).isEmpty();
  }

  @Test
  void differentOnesKeepNone() {
    add(10_000, 1_400, 0);
    add(22_000, 1_400, 0);
    add(34_000, 900, 0);
    assertThat(bursts.beatFrames()).isEmpty();
  }

  /** 0.16 s and 3.4 s are no metronome's beats. */
  @Test
  void tooFastAndTooSlowOnesKeepNone() {
    for (int distance : new int[] {3_500, 75_000}) {
      add(10_000, 1_400, 0);
      add(10_000 + distance, 1_400, 0);
      add(10_000 + 2 * distance, 1_400, 0);
      assertThat(bursts.beatFrames()).isEmpty();
    }
  }

  /** The newest three count. */
  @Test
  void theOldestIsForgotten() {
    add(1_000, 900, 0);
    add(10_000, 900, 0);
    add(22_000, 1_400, 0);
    add(34_000, 1_400, 0);
    assertThat(bursts.beatFrames().orElseThrow()).isCloseTo(12_000, within(0.5));
  }
}
