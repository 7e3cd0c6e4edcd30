package neckway.string;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

class StiffnessTests {
  private static final double RATE = 44_100;
  private static final int ONSET = 2_000;
  private final Stiffness stiffness = new Stiffness(RATE);

  /**
   * A decaying string by Fletcher's formula, f_k = k f0 sqrt(1 + B k^2) ("Normal vibration
   * frequencies of a stiff piano string", JASA 36, 1964); partials from {@code exactFrom} on are
   * exact harmonics.
   */
  private static float[] string(double f0Hz, double b, int exactFrom, double noise, long seed) {
    Random random = new Random(seed);
    float[] x = new float[ONSET + (int) (0.4 * RATE)];
    for (int k = 1; k <= 40 && k * f0Hz < 7000; k++) {
      double hz = k < exactFrom ? k * f0Hz * Math.sqrt(1 + b * k * k) : k * f0Hz;
      double phase = 2 * Math.PI * random.nextDouble();
      double loss = 1 + 0.6 * hz * hz / 1e6;
      double loud = Math.abs(Math.sin(0.37 * k)) / k;
      for (int n = ONSET; n < x.length; n++) {
        double t = (n - ONSET) / RATE;
        x[n] += (float) (loud * Math.exp(-loss * t) * Math.sin(2 * Math.PI * hz * t + phase));
      }
    }
    for (int n = 0; n < x.length; n++) {
      x[n] += (float) (noise * random.nextGaussian());
    }
    return x;
  }

  private StiffnessEstimate read(float[] x, double seconds, double f0Hz) {
    return stiffness.read(x, ONSET, (int) (seconds * RATE), f0Hz).orElseThrow();
  }

  @Test
  void findsTheStiffnessOfAStringFromATenthOfASecond() {
    double[][] strings = {
      {82.41, 15.6e-5}, {110, 8e-5}, {196, 12.2e-5}, {392, 3.2e-4}, {659, 9e-5}
    };
    for (double[] s : strings) {
      StiffnessEstimate r = read(string(s[0], s[1], 99, 1e-4, 1), 0.1, s[0] * 1.004);
      assertThat(r.lnStiffness()).as("f0 %s", s[0]).isCloseTo(Math.log(s[1]), within(0.08));
      assertThat(r.standardError()).isLessThan(0.35);
    }
  }

  @Test
  void isNotPulledDownByUpperPartialsThatAreExactHarmonics() {
    StiffnessEstimate r = read(string(98, 1.5e-4, 15, 1e-4, 2), 0.15, 98);
    assertThat(r.lnStiffness()).isCloseTo(Math.log(1.5e-4), within(0.1));
  }

  @Test
  void theErrorIsOfTheSizeItSays() {
    int inside = 0;
    for (int seed = 0; seed < 40; seed++) {
      StiffnessEstimate r = read(string(220, 6e-5, 99, 0.003, seed), 0.12, 220);
      inside += Math.abs(r.lnStiffness() - Math.log(6e-5)) < 2 * r.standardError() ? 1 : 0;
    }
    assertThat(inside).isGreaterThanOrEqualTo(35);
  }

  @Test
  void noiseTellsNothing() {
    float[] x = string(220, 6e-5, 99, 0, 3);
    Random random = new Random(4);
    for (int n = 0; n < x.length; n++) {
      x[n] = (float) (0.1 * random.nextGaussian());
    }
    Optional<StiffnessEstimate> r = stiffness.read(x, ONSET, (int) (0.12 * RATE), 220);
    assertThat(r.map(StiffnessEstimate::standardError).orElse(9.0)).isGreaterThan(0.7);
  }

  @Test
  void theSpreadOfACandidateIsFoldedIn() {
    StiffnessEstimate r = read(string(147, 1e-4, 99, 1e-4, 5), 0.12, 147);
    double there = Math.log(1e-4);
    assertThat(r.logLikelihood(there + 0.5, 0.3)).isGreaterThan(r.logLikelihood(there + 0.5));
    assertThat(r.logLikelihood(there, 0.3)).isLessThan(r.logLikelihood(there, 0.01));
    assertThat(r.logLikelihood(there, 0)).isCloseTo(r.logLikelihood(there), within(1e-9));
    assertThat(r.logLikelihood(-99)).isEqualTo(r.logLikelihood(Math.log(Stiffness.LOWEST)));
  }

  @Test
  void tellsSoundFullOfExactHarmonicsAndWeighsItAsTold() {
    StiffnessEstimate full = read(string(98, 2e-4, 6, 1e-4, 6), 0.15, 98);
    StiffnessEstimate free = read(string(98, 2e-4, 99, 1e-4, 6), 0.15, 98);
    assertThat(full.drivenEvidence()).isPositive();
    assertThat(free.drivenEvidence()).isNegative();
    double lowest = Math.log(5e-6);
    double there = Math.log(2e-4);
    assertThat(difference(full.givenDriven(0.999), lowest, there))
        .isLessThan(difference(full.givenDriven(0.001), lowest, there));
    assertThatThrownBy(() -> full.givenDriven(1)).hasMessageContaining("1.0");
  }

  private static double difference(StiffnessEstimate r, double lnStiffness, double other) {
    return r.logLikelihood(lnStiffness) - r.logLikelihood(other);
  }

  @Test
  void tooLittleSoundIsNoReading() {
    float[] x = string(147, 1e-4, 99, 1e-4, 5);
    assertThat(stiffness.read(x, ONSET, (int) (0.04 * RATE), 147)).isEmpty();
    assertThat(stiffness.read(x, x.length - 100, (int) (0.12 * RATE), 147)).isEmpty();
    assertThat(stiffness.read(new float[9_000], 0, 9_000, 147)).isEmpty();
  }

  @Test
  void saysWhatIsWrongWithItsArguments() {
    assertThatThrownBy(() -> new Stiffness(4_000)).hasMessageContaining("4000");
    assertThatThrownBy(() -> stiffness.read(new float[9_000], -1, 9_000, 147))
        .hasMessageContaining("-1");
    assertThatThrownBy(() -> stiffness.read(new float[9_000], 0, 9_000, Double.NaN))
        .hasMessageContaining("NaN");
  }
}
