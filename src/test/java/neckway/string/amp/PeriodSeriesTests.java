package neckway.string.amp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PeriodSeriesTests {
  private static final int HARMONICS = 15;

  private final Random random = new Random(3);
  private final double[] re = random.doubles(HARMONICS, -1, 1).toArray();
  private final double[] im = random.doubles(HARMONICS, -1, 1).toArray();

  private double sound(double constant, int n, int points) {
    double sum = constant;
    for (int k = 1; k <= HARMONICS; k++) {
      double phase = 2 * Math.PI * k * n / points;
      sum += re[k - 1] * Math.cos(phase) - im[k - 1] * Math.sin(phase);
    }
    return sum;
  }

  @ParameterizedTest
  @ValueSource(ints = {64, 96})
  void aSumOfHarmonicsIsThatSumAtEachSample(int points) {
    PeriodSeries series = new PeriodSeries(points, HARMONICS);
    series.set(0.3, re, im);
    for (int n = 0; n <= points / 2; n++) {
      assertThat(series.forward[n]).isCloseTo(sound(0.3, n, points), within(1e-12));
      assertThat(series.back[n]).isCloseTo(sound(0.3, -n, points), within(1e-12));
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {64, 96})
  void theHarmonicsComeBack(int points) {
    PeriodSeries series = new PeriodSeries(points, HARMONICS);
    series.set(0.3, re, im);
    series.fold();
    assertThat(series.re(0)).isCloseTo(0.3, within(1e-12));
    for (int k = 1; k <= HARMONICS; k++) {
      assertThat(series.re(k)).isCloseTo(0.5 * re[k - 1], within(1e-12));
      assertThat(series.im(k)).isCloseTo(0.5 * im[k - 1], within(1e-12));
    }
  }
}
