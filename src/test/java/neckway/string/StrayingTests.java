package neckway.string;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class StrayingTests {
  /**
   * Student's t of four degrees of freedom: its density is (3 / 8) (1 + z^2 / 4)^(-5 / 2), so that
   * at z = 2 it is 2^(-5 / 2) of that at 0.
   */
  @Test
  void isStudentsDistribution() {
    assertThat(Straying.log(0)).isZero();
    assertThat(Straying.log(2)).isEqualTo(-2.5 * Math.log(2), within(1e-12));
    assertThat(Straying.log(-2)).isEqualTo(Straying.log(2));
  }

  /**
   * 2.776 is beyond 97.5 of a hundred (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2;
   * value from memory).
   */
  @Test
  void itsTailsAreThoseOfTheTable() {
    double inside = 0;
    double all = 0;
    for (double z = -400; z < 400; z += 1e-3) {
      double density = Math.exp(Straying.log(z));
      all += density;
      inside += z < 2.776 ? density : 0;
    }
    assertThat(inside / all).isEqualTo(0.975, within(2e-4));
  }
}
