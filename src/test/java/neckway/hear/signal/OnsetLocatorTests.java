package neckway.hear.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import neckway.hear.Sounds;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Onsets are known to the sample here: each is put in at a frame of our own choosing. */
class OnsetLocatorTests {
  private static final int ONSET = 3000;

  /**
   * Worked out by hand: silence, then 0.5, -0.5, 0.5, ... The second difference is nothing, then
   * 0.5, -1.5, 2, -2, ...; three tenths of its peak are 0.6, first passed at the second sample.
   */
  @Test
  void handExample() {
    float[] x = new float[4000];
    for (int i = ONSET; i < x.length; i++) {
      x[i] = (i - ONSET) % 2 == 0 ? 0.5f : -0.5f;
    }
    OnsetLocator stamp = new OnsetLocator(22_050);
    assertThat(stamp.find(x, ONSET + 200, 0)).isEqualTo(ONSET + 1);
    assertThat(stamp.score()).isGreaterThan(100);
  }

  /** A change of variance (Basseville and Nikiforov 1993): white noise that steps up by 20 dB. */
  @ParameterizedTest
  @ValueSource(doubles = {22_050, 24_000, 16_000})
  void stepInTheLevelOfNoise(double rateHz) {
    OnsetLocator stamp = new OnsetLocator(rateHz);
    for (int seed = 0; seed < 20; seed++) {
      float[] x = new float[4000];
      Sounds.addNoise(x, 0, ONSET, 0.003, seed);
      Sounds.addNoise(x, ONSET, x.length, 0.03, 100 + seed);
      for (double later : new double[] {0.006, 0.010, 0.016}) {
        int found = stamp.find(x, ONSET + (int) (later * rateHz), 0);
        assertThat(1000 * (found - ONSET) / rateHz)
            .as("ms, seed %d, seen %.3f s later", seed, later)
            .isCloseTo(0, within(1.0));
      }
    }
  }

  /** A note plucked while another, much louder, goes on: its period is known and combed off. */
  @ParameterizedTest
  @CsvSource({"45, 57, 0.3", "40, 64, 0.2"})
  void underASustainedTone(int old, int midi, double share) {
    double rateHz = 22_050;
    double period = rateHz / Sounds.hz(old);
    for (int shift = 0; shift < 10; shift++) {
      float[] x = Sounds.silence(rateHz, 0.4);
      for (int k = 1; k <= 12; k++) {
        Sounds.addSine(x, rateHz, k * Sounds.hz(old), 0.3 / k, 0.7 * k + shift);
      }
      Sounds.addNoise(x, 0, x.length, 1e-4, shift);
      double onset = (6000 + 0.1 * shift) / rateHz;
      Sounds.pluck(x, rateHz, midi, Sounds.STIFFNESS, share, onset, 1);
      int found = new OnsetLocator(rateHz).find(x, 6000 + 220, 2 * period);
      assertThat(1000 * (found / rateHz - onset)).as("ms, %d", shift).isCloseTo(0, within(1.0));
    }
  }

  @Test
  void nothingHappeningIsUnsure() {
    float[] x = new float[4000];
    Sounds.addNoise(x, 0, x.length, 0.01, 4);
    OnsetLocator stamp = new OnsetLocator(22_050);
    stamp.find(x, 3500, 0);
    assertThat(stamp.score()).isLessThan(25);
  }
}
