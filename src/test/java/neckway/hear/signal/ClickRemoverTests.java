package neckway.hear.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import neckway.hear.Sounds;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ClickRemoverTests {
  private static final double RATE_HZ = 22_050;
  private static final double BEAT_SECONDS = 0.6;
  private static final int FIRST = 12_000;
  private static final int HOP = 64;

  private final double beat = BEAT_SECONDS * RATE_HZ;

  private int beatFrame(int index) {
    return (int) Math.rint(FIRST + index * beat);
  }

  /** Adds a burst that starts at full size and is gone, by 60 dB, in 50 ms. */
  private static void click(float[] x, int at, double hz, double size) {
    for (int i = 0; i < 0.05 * RATE_HZ; i++) {
      double t = i / RATE_HZ;
      x[at + i] += (float) (size * Math.exp(-t / 0.007) * Math.cos(2 * Math.PI * hz * t));
    }
  }

  private float[] room(int beats) {
    float[] x = new float[beatFrame(beats) + 3000];
    Sounds.addNoise(x, 0, x.length, 1e-4, 8);
    return x;
  }

  private ClickRemover run(float[] x, double expectedBeat) {
    ClickRemover remover = new ClickRemover(RATE_HZ);
    remover.expect(expectedBeat, 4);
    for (int to = 8_192 + HOP; to <= x.length; to += HOP) {
      remover.process(x, to - HOP, to, 0);
    }
    return remover;
  }

  private double leftDb(float[] out, float[] in, int beatIndex) {
    int from = beatFrame(beatIndex) - 20;
    double left = 0;
    double all = 0;
    for (int i = from; i < from + (int) (0.05 * RATE_HZ); i++) {
      left += out[i] * out[i];
      all += in[i] * in[i];
    }
    return Sounds.db(left / all);
  }

  @Test
  void constants() {
    assertThat(ClickRemover.LEAST_SHARE).isEqualTo(0.4);
    assertThat(ClickRemover.MOST_SHARE).isEqualTo(1.8);
    assertThat(ClickRemover.LOOK_SECONDS).isEqualTo(0.008);
  }

  @Test
  void aClickThatIsNotThereIsNotTakenOut() {
    float[] x = room(12);
    for (int i = 0; i < 4; i++) {
      click(x, beatFrame(i), 1500, 0.2);
    }
    float[] in = x.clone();
    run(x, beat);
    int from = beatFrame(4) - 100;
    assertThat(Arrays.copyOfRange(x, from, x.length))
        .isEqualTo(Arrays.copyOfRange(in, from, in.length));
  }

  /** The first of a bar sounds otherwise; each kind is learnt and taken out for itself. */
  @Test
  void anAccentIsLearntForItself() {
    float[] x = room(16);
    for (int i = 0; i < 16; i++) {
      click(x, beatFrame(i), i % 4 == 0 ? 2600 : 1500, i % 4 == 0 ? 0.25 : 0.15);
    }
    float[] in = x.clone();
    ClickRemover remover = run(x, beat);
    for (int i = 4; i < 16; i++) {
      assertThat(leftDb(x, in, i)).as("dB left of beat " + i).isLessThan(-15);
    }
    assertThat(remover.clicks()).isEqualTo(16);
    for (int i = 0; i < 16; i++) {
      assertThat(1000 * (remover.clickFrame(i) - beatFrame(i)) / RATE_HZ)
          .as("ms, click " + i)
          .isCloseTo(0, within(1.0));
    }
  }

  @Test
  void nothingIsDoneWhereNothingIsExpected() {
    float[] x = room(6);
    for (int i = 0; i < 6; i++) {
      click(x, beatFrame(i), 1500, 0.2);
    }
    float[] in = x.clone();
    ClickRemover remover = new ClickRemover(RATE_HZ);
    for (int to = 8_192 + HOP; to <= x.length; to += HOP) {
      remover.process(x, to - HOP, to, 0);
    }
    assertThat(x).isEqualTo(in);
    assertThat(remover.clicks()).isZero();
    assertThat(remover.grid()).isEmpty();
  }

  /** Three that keep a beat of their own make a grid, accent or not; the rest is taken out. */
  @ParameterizedTest
  @ValueSource(doubles = {0.31, 0.73, 0.985, 1.37, 2.6})
  void clicksMayKeepAnotherBeatThanExpected(double share) {
    float[] x = room(16);
    for (int i = 0; i < 16; i++) {
      click(x, beatFrame(i), i % 4 == 0 ? 2600 : 1500, i % 4 == 0 ? 0.25 : 0.15);
    }
    float[] in = x.clone();
    ClickRemover remover = run(x, share * beat);
    for (int i = 5; i < 16; i++) {
      assertThat(leftDb(x, in, i)).as("dB left of beat " + i).isLessThan(-15);
    }
    assertThat(remover.clicks()).isEqualTo(16);
    for (int i = 0; i < 16; i++) {
      assertThat(1000 * (remover.clickFrame(i) - beatFrame(i)) / RATE_HZ)
          .as("ms, click " + i)
          .isCloseTo(0, within(1.0));
    }
  }

  /** A hand that taps the same sound is some 10 ms uneven; common practice, no source. */
  @Test
  void tapsOfAHandMakeNoGrid() {
    int[] unevenMs = {0, 9, -4, 8, 0, 5, -7, 6};
    float[] x = room(8);
    for (int i = 0; i < 8; i++) {
      click(x, beatFrame(i) + (int) (unevenMs[i] * RATE_HZ / 1000), 1500, 0.2);
    }
    float[] in = x.clone();
    ClickRemover remover = run(x, 1.37 * beat);
    assertThat(remover.grid()).isEmpty();
    assertThat(x).isEqualTo(in);
  }

  @Test
  void notesAreNotLearntAsClicks() {
    float[] x = room(8);
    for (int i = 0; i < 8; i++) {
      double at = beatFrame(i) / RATE_HZ;
      Sounds.pluck(x, RATE_HZ, 45 + i, Sounds.STIFFNESS, 0.3, at, at + 0.5);
    }
    float[] in = x.clone();
    ClickRemover remover = run(x, beat);
    assertThat(remover.clicks()).isZero();
    assertThat(x).isEqualTo(in);
  }

  @Test
  void learnsTheCountInAndTakesTheRestOut() {
    float[] x = room(12);
    for (int i = 0; i < 12; i++) {
      click(x, beatFrame(i), 1500, 0.2);
    }
    float[] in = x.clone();
    ClickRemover remover = run(x, beat);
    for (int i = 4; i < 12; i++) {
      assertThat(leftDb(x, in, i)).as("dB left of beat " + i).isLessThan(-15);
    }
    assertThat(remover.clicks()).isEqualTo(12);
    for (int i = 0; i < 12; i++) {
      assertThat(1000 * (remover.clickFrame(i) - beatFrame(i)) / RATE_HZ)
          .as("ms, click " + i)
          .isCloseTo(0, within(1.0));
    }
  }

  @Test
  void theSoundOfANoteStaysUnderATakenClick() {
    float[] x = room(10);
    for (int i = 0; i < 10; i++) {
      click(x, beatFrame(i), 1500, 0.2);
    }
    float[] note = new float[x.length];
    Sounds.pluck(note, RATE_HZ, 45, Sounds.STIFFNESS, 0.05, beatFrame(4) / RATE_HZ + 0.1, 9);
    for (int i = 0; i < x.length; i++) {
      x[i] += note[i];
    }
    run(x, beat);
    for (int beatIndex = 5; beatIndex < 9; beatIndex++) {
      double left = 0;
      double all = 0;
      for (int i = beatFrame(beatIndex); i < beatFrame(beatIndex) + 1000; i++) {
        left += (x[i] - note[i]) * (x[i] - note[i]);
        all += note[i] * note[i];
      }
      assertThat(Sounds.db(left / all)).as("dB beside the note").isLessThan(-10);
    }
  }
}
