package neckway.hear.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AutocorrelationTests {
  /** Against the sum as it is written, whatever the length and however the lags are shared out. */
  @ParameterizedTest
  @CsvSource({"1, 1", "7, 3", "63, 20", "64, 64", "65, 64", "170, 31", "375, 64", "500, 255"})
  void sumsAsWritten(int length, int block) {
    Random random = new Random(length);
    float[] x = new float[length + 300];
    for (int i = 0; i < x.length; i++) {
      x[i] = (float) random.nextGaussian();
    }
    int from = 100;
    int lags = length + 10;
    float[] found = new float[lags];
    Autocorrelation products = new Autocorrelation();
    products.begin(x, from - 90, from + 200);
    products.of(0, 5, found);
    products.begin(x, from, from + length);
    for (int first = 0; first < lags; first += block) {
      products.of(first, Math.min(lags, first + block), found);
    }
    for (int lag = 0; lag < lags; lag++) {
      double sum = 0;
      for (int i = from; i + lag < from + length; i++) {
        sum += (double) x[i] * x[i + lag];
      }
      assertThat((double) found[lag]).as("lag " + lag).isCloseTo(sum, within(1e-4));
    }
  }
}
