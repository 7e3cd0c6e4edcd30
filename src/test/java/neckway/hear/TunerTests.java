package neckway.hear;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.lang.management.ManagementFactory;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TunerTests {
  private static double cents(double hz, double trueHz) {
    return 1200 * Math.log(hz / trueHz) / Math.log(2);
  }

  /** Largest error in cents over all estimates; the tone must be found. */
  private static double worst(float[] sound, double rate, double trueHz) {
    Tuner tuner = new Tuner(rate);
    double worst = 0;
    int estimates = 0;
    for (int i = 0; i + 480 <= sound.length; i += 480) {
      if (tuner.process(sound, i, 480)) {
        assertThat(tuner.steady()).as("estimate " + estimates + " at " + trueHz + " Hz").isTrue();
        worst = Math.max(worst, Math.abs(cents(tuner.pitchHz(), trueHz)));
        estimates++;
      }
    }
    assertThat(estimates).isGreaterThan(3);
    return worst;
  }

  /** f_k = k f0 sqrt(1 + B k^2), Fletcher 1964; the pitch is its first partial. */
  private static float[] string(
      double rate, double firstHz, double stiffness, double firstShare, double seconds) {
    double f0 = firstHz / Math.sqrt(1 + stiffness);
    float[] sound = new float[(int) (rate * seconds)];
    Random random = new Random(3);
    for (int k = 1; k <= 30; k++) {
      double hz = k * f0 * Math.sqrt(1 + stiffness * k * k);
      if (hz > 0.45 * rate) {
        break;
      }
      double share = 0.25 * (k == 1 ? firstShare : 1.0 / k);
      double phase = 2 * Math.PI * random.nextDouble();
      for (int i = 0; i < sound.length; i++) {
        double t = i / rate;
        double decay = Math.exp(-t * (0.4 + 0.15 * k));
        sound[i] += (float) (share * decay * Math.sin(2 * Math.PI * hz * t + phase));
      }
    }
    return sound;
  }

  @Test
  void concertPitch() {
    float[] sound = new float[48_000];
    for (int i = 0; i < sound.length; i++) {
      sound[i] = (float) (0.5 * Math.sin(2 * Math.PI * 440 * i / 48_000.0));
    }
    assertThat(worst(sound, 48_000, 440)).isLessThan(0.02);
  }

  @Test
  void everySemitoneFromB0ToE6IsToldToAFractionOfACent() {
    for (int midi = 23; midi <= 88; midi++) {
      // MIDI 1.0: note 69 is A4; ISO 16: A4 is 440 Hz. Off by 13 cents, to avoid round numbers.
      double hz = 440 * Math.pow(2, (midi - 69 + 0.13) / 12);
      double stiffness = midi < 60 ? 1.2e-4 : 5e-5;
      assertThat(worst(string(44_100, hz, stiffness, 1, 0.8), 44_100, hz))
          .as("MIDI " + midi)
          .isLessThan(0.2);
    }
  }

  @ParameterizedTest
  @CsvSource({"30.868, 3e-4", "41.203, 2e-4", "82.407, 1.5e-4", "110, 8e-5"})
  void weakFirstPartialOfALowStringDoesNotSpoilIt(double hz, double stiffness) {
    assertThat(worst(string(48_000, hz, stiffness, 0.02, 0.8), 48_000, hz)).isLessThan(0.5);
  }

  @ParameterizedTest
  @ValueSource(doubles = {30.868, 82.407, 196, 329.63, 1318.51})
  void noiseTwentyDecibelsUnderTheTone(double hz) {
    float[] sound = string(48_000, hz, 5e-5, 1, 1.0);
    double power = 0;
    for (float x : sound) {
      power += x * x / sound.length;
    }
    Random random = new Random(5);
    for (int i = 0; i < sound.length; i++) {
      sound[i] += (float) (Math.sqrt(power / 100) * random.nextGaussian());
    }
    assertThat(worst(sound, 48_000, hz)).isLessThan(1);
  }

  @ParameterizedTest
  @ValueSource(ints = {8_000, 11_025, 22_050, 44_100, 96_000, 192_000})
  void everySampleRate(int rate) {
    assertThat(worst(string(rate, 246.94, 5e-5, 1, 0.6), rate, 246.94)).isLessThan(0.2);
  }

  @Test
  void noiseAndSilenceAreNoTone() {
    Random random = new Random(9);
    float[] noise = new float[48_000];
    for (int i = 0; i < noise.length; i++) {
      noise[i] = (float) (0.2 * random.nextGaussian());
    }
    for (float[] sound : new float[][] {noise, new float[48_000]}) {
      Tuner tuner = new Tuner(48_000);
      assertThat(tuner.process(sound, 0, sound.length)).isTrue();
      assertThat(tuner.steady()).isFalse();
      assertThatThrownBy(tuner::pitchHz).isInstanceOf(IllegalStateException.class);
    }
  }

  @Test
  void blocksOfAnySizeGiveTheSame() {
    float[] sound = string(48_000, 146.83, 1e-4, 1, 0.7);
    Tuner whole = new Tuner(48_000);
    whole.process(sound, 0, sound.length);
    Tuner single = new Tuner(48_000);
    for (int i = 0; i < sound.length; i++) {
      single.process(sound, i, 1);
    }
    assertThat(single.pitchHz()).isEqualTo(whole.pitchHz());
  }

  @Test
  void allocatesNothingOnceMade() {
    var threads = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
    float[] sound = string(48_000, 110, 1e-4, 1, 1.0);
    Tuner tuner = new Tuner(48_000);
    tuner.process(sound, 0, sound.length);
    long id = Thread.currentThread().getId();
    threads.getThreadAllocatedBytes(id);
    long before = threads.getThreadAllocatedBytes(id);
    tuner.process(sound, 0, sound.length);
    assertThat(threads.getThreadAllocatedBytes(id) - before).isLessThan(1_000);
  }

  @Test
  void rateOutOfRangeIsRefused() {
    assertThatThrownBy(() -> new Tuner(7_999)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Tuner(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
  }
}
