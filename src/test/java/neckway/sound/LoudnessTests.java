package neckway.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Loudness against figures of the standards: ITU-R BS.1770-4, annex 1, and EBU Tech 3341, table 1.
 * The figures of Tech 3341 are for the same sound in two channels; one channel reads 3.01 lower.
 */
class LoudnessTests {
  private static final double ONE_OF_TWO_CHANNELS_LU = -3.01;

  /** A sine whose level steps: pairs of dBFS (of the peak) and seconds. */
  private static float[] sine(double hz, int rate, double... levels) {
    double seconds = 0;
    for (int i = 1; i < levels.length; i += 2) {
      seconds += levels[i];
    }
    float[] sound = new float[(int) Math.round(seconds * rate)];
    int at = 0;
    for (int i = 0; i < levels.length; i += 2) {
      double amplitude = Math.pow(10, levels[i] / 20);
      long until = Math.min(sound.length, at + Math.round(levels[i + 1] * rate));
      for (; at < until; at++) {
        sound[at] = (float) (amplitude * Math.sin(2 * Math.PI * hz * at / rate));
      }
    }
    return sound;
  }

  private static double lkfs(float[] sound, int rate) {
    return Loudness.integrated(sound, rate).orElseThrow();
  }

  /**
   * BS.1770-4, annex 1: 0 dB FS, 997 Hz, in one front channel: -3.01 LKFS. A tenth is what EBU Tech
   * 3341 allows a meter; a twentieth is held at every rate.
   */
  @ParameterizedTest
  @ValueSource(ints = {22_050, 44_100, 48_000, 96_000})
  void standardsOwnCalibrationHoldsAtEveryRate(int rate) {
    assertThat(lkfs(sine(997, rate, 0, 20), rate))
        .isEqualTo(-3.01, within(rate == 48_000 ? 0.005 : 0.05));
  }

  /** BS.1770-4, tables 1 and 2: the filters' coefficients at 48 kHz. */
  @Test
  void filtersAreThoseOfTheTables() {
    Loudness.Biquad head = Loudness.head(48_000);
    assertThat(head.b0).isEqualTo(1.53512485958697, within(1e-10));
    assertThat(head.b1).isEqualTo(-2.69169618940638, within(1e-10));
    assertThat(head.b2).isEqualTo(1.19839281085285, within(1e-10));
    assertThat(head.a1).isEqualTo(-1.69065929318241, within(1e-10));
    assertThat(head.a2).isEqualTo(0.73248077421585, within(1e-10));
    Loudness.Biquad low = Loudness.low(48_000);
    assertThat(low.a1).isEqualTo(-1.99004745483398, within(1e-10));
    assertThat(low.a2).isEqualTo(0.99007225036621, within(1e-10));
  }

  /** EBU Tech 3341, test cases 1 to 5, each within 0.1 LU as it asks. */
  @Test
  void testCasesOfTheBroadcastersHold() {
    int rate = 48_000;
    assertCase(-23, sine(1000, rate, -23, 20));
    assertCase(-33, sine(1000, rate, -33, 20));
    assertCase(-23, sine(1000, rate, -36, 10, -23, 60, -36, 10));
    assertCase(-23, sine(1000, rate, -72, 10, -36, 10, -23, 60, -36, 10, -72, 10));
    assertCase(-23, sine(1000, rate, -26, 20, -20, 20.1, -26, 20));
  }

  private static void assertCase(double expected, float[] sound) {
    assertThat(lkfs(sound, 48_000)).isEqualTo(expected + ONE_OF_TWO_CHANNELS_LU, within(0.1));
  }

  @Test
  void silenceHasNoLoudnessAndAShortSoundHasOne() {
    assertThat(Loudness.integrated(new float[0], 48_000)).isEmpty();
    assertThat(Loudness.integrated(new float[96_000], 48_000)).isEmpty();
    assertThat(Loudness.integrated(sine(997, 48_000, -90, 2), 48_000)).isEmpty();
    assertThat(lkfs(sine(997, 48_000, 0, 0.2), 48_000)).isEqualTo(-3.01, within(0.1));
  }
}
