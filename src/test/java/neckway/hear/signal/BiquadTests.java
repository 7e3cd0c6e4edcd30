package neckway.hear.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import neckway.hear.Sounds;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BiquadTests {
  /**
   * Worked out by hand: cut at a quarter of the rate, w = tan(pi/4) = 1, n = 1 / (2 + sqrt 2) =
   * 0.292893, a1 = 0, a2 = (2 - sqrt 2) n = 0.171573; so h = n, 2n, n - a2 n, -2 a2 n.
   */
  @Test
  void handExample() {
    Biquad low = Biquad.lowPass(250, 1000);
    double[] expected = {0.292893, 0.585786, 0.242641, -0.100505};
    for (int i = 0; i < expected.length; i++) {
      assertThat(low.next(i == 0 ? 1 : 0)).as("h[" + i + "]").isCloseTo(expected[i], within(1e-6));
    }
  }

  @Test
  void passesAndStopsDirectCurrent() {
    Biquad low = Biquad.lowPass(1500, 22_050);
    Biquad high = Biquad.highPass(60, 22_050);
    double l = 0;
    double h = 1;
    for (int i = 0; i < 22_050; i++) {
      l = low.next(1);
      h = high.next(1);
    }
    assertThat(l).isCloseTo(1, within(1e-9));
    assertThat(h).isCloseTo(0, within(1e-9));
  }

  /**
   * Second-order Butterworth by the bilinear transform: |H|^2 = 1 / (1 + (tan(pi f / fs) / tan(pi
   * fc / fs))^4) (Butterworth, "On the theory of filter amplifiers", 1930; Oppenheim and Schafer,
   * "Discrete-Time Signal Processing", ch. 7); -3.0103 dB at the cut.
   */
  @ParameterizedTest
  @CsvSource({"1500,22050", "1500,24000", "1500,8000", "60,22050"})
  void isButterworth(double cutHz, double rateHz) {
    for (double ratio : new double[] {0.25, 0.5, 1, 1.5, 2}) {
      double hz = cutHz * ratio;
      double warped = Math.tan(Math.PI * hz / rateHz) / Math.tan(Math.PI * cutHz / rateHz);
      double low = -Sounds.db(1 + Math.pow(warped, 4));
      double high = -Sounds.db(1 + Math.pow(warped, -4));
      String as = hz + " Hz of " + rateHz;
      assertThat(gainDb(Biquad.lowPass(cutHz, rateHz), hz, rateHz))
          .as(as)
          .isCloseTo(low, within(1e-3));
      assertThat(gainDb(Biquad.highPass(cutHz, rateHz), hz, rateHz))
          .as(as)
          .isCloseTo(high, within(1e-3));
    }
  }

  /** From the impulse response, by its Fourier transform at one frequency. */
  private static double gainDb(Biquad filter, double hz, double rateHz) {
    double re = 0;
    double im = 0;
    for (int i = 0; i < rateHz; i++) {
      double h = filter.next(i == 0 ? 1 : 0);
      re += h * Math.cos(2 * Math.PI * hz * i / rateHz);
      im += h * Math.sin(2 * Math.PI * hz * i / rateHz);
    }
    return Sounds.db(re * re + im * im);
  }
}
