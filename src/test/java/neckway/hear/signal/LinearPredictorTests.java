package neckway.hear.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import neckway.hear.Sounds;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LinearPredictorTests {
  private static final double RATE_HZ = 11_025;

  /**
   * Worked out by hand: 1, -1, 1, -1, ... By Burg's method the first reflection coefficient is -2
   * sum(f b) / sum(f^2 + b^2) = 1, so x[n] = -x[n-1], for ever.
   */
  @Test
  void handExample() {
    float[] y = {1, -1, 1, -1, 1, -1};
    LinearPredictor next = new LinearPredictor(1, 6, 4);
    next.learn(y, 6);
    next.carryOn(4);
    for (int i = 0; i < 4; i++) {
      assertThat(next.at(i)).as("frame " + i).isCloseTo(i % 2 == 0 ? 1 : -1, within(1e-6f));
    }
  }

  /** As the first, and it falls by a fifth each time: k = 2 * 0.8 / (1 + 0.64) = 0.97561. */
  @Test
  void handExampleThatDies() {
    float[] y = {1, -0.8f, 0.64f, -0.512f, 0.4096f};
    LinearPredictor next = new LinearPredictor(1, 5, 2);
    next.learn(y, 5);
    next.carryOn(2);
    assertThat(next.at(0)).isCloseTo(-0.39961f, within(1e-5f));
    assertThat(next.at(1)).isCloseTo(0.38986f, within(1e-5f));
  }

  @Test
  void silenceGoesOnAsSilence() {
    LinearPredictor next = new LinearPredictor(80, 600, 200);
    next.learn(new float[600], 600);
    next.carryOn(200);
    for (int i = 0; i < 200; i++) {
      assertThat(next.at(i)).isZero();
    }
  }

  /** In two goes as in one, and anew after it has learnt again. */
  @Test
  void goesOnFromWhereItWasLeft() {
    float[] y = new float[1000];
    Sounds.addNoise(y, 0, y.length, 1, 3);
    LinearPredictor whole = new LinearPredictor(80, 600, 200);
    whole.learn(y, 900);
    whole.carryOn(200);
    LinearPredictor bit = new LinearPredictor(80, 600, 200);
    bit.learn(y, 1000);
    bit.carryOn(120);
    bit.learn(y, 900);
    bit.carryOn(50);
    bit.carryOn(200);
    for (int i = 0; i < 200; i++) {
      assertThat(bit.at(i)).as("frame " + i).isEqualTo(whole.at(i));
    }
  }

  @Test
  void refusesTooLittleToLearnFrom() {
    assertThatThrownBy(() -> new LinearPredictor(80, 160, 200))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /**
   * A ringing string is a sum of dying sines and satisfies a linear recurrence (Prony 1795), so
   * what comes is known in closed form. Bounds: the same method in double precision, written in
   * numpy after Burg (1967), leaves 0.11 of an A2 and 0.24 of an A3 with the E4 above it.
   */
  @ParameterizedTest
  @CsvSource({"45, 45, 0.14", "57, 57, 0.14", "64, 64, 0.14", "57, 64, 0.28"})
  void carriesDyingSinesOnFor20Ms(double midi, double other, double mostLeft) {
    float[] y = new float[2000];
    for (double note : new double[] {midi, other}) {
      for (int k = 1; k <= 6; k++) {
        double hz = Sounds.partialHz(Sounds.hz(note), Sounds.STIFFNESS, k);
        for (int i = 0; i < y.length; i++) {
          double t = i / RATE_HZ;
          y[i] += (float) (0.2 / k * Math.exp(-t * (1 + k)) * Math.sin(2 * Math.PI * hz * t + k));
        }
      }
    }
    Sounds.addNoise(y, 0, y.length, 1e-4, 3);
    assertThat(left(y)).as("share left").isLessThan(mostLeft);
  }

  private static double left(float[] y) {
    int count = (int) (0.02 * RATE_HZ);
    LinearPredictor next = new LinearPredictor(80, (int) (0.055 * RATE_HZ), count);
    next.learn(y, 1200);
    next.carryOn(count);
    double left = 0;
    double all = 0;
    for (int i = 0; i < count; i++) {
      double off = y[1200 + i] - next.at(i);
      left += off * off;
      all += y[1200 + i] * y[1200 + i];
    }
    return Math.sqrt(left / all);
  }
}
