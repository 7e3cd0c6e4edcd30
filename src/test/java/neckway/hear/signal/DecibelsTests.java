package neckway.hear.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class DecibelsTests {
  @Test
  void areTenTimesTheCommonLogarithm() {
    for (double db = -200; db < 100; db += 0.0137) {
      float power = (float) Math.pow(10, db / 10);
      assertThat((double) Decibels.of(power)).isCloseTo(10 * Math.log10(power), within(1e-3));
    }
  }

  /** A power of one is 0 dB, twice the power 3.01 dB: common knowledge of the trade. */
  @Test
  void ofOneAndTwo() {
    assertThat(Decibels.of(1)).isZero();
    assertThat(Decibels.of(2)).isCloseTo(3.0103f, within(1e-4f));
  }
}
