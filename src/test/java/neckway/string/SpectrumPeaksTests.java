package neckway.string;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class SpectrumPeaksTests {
  /** Against the library's sort, with numbers that are equal among them. */
  @Test
  void theSmallestIsThatOfTheSortedNumbers() {
    Random random = new Random(3);
    for (int i = 0; i < 500; i++) {
      int count = 1 + random.nextInt(90);
      double[] x = random.doubles(count + 4).map(a -> Math.rint(30 * a)).toArray();
      double[] sorted = Arrays.copyOf(x, count);
      Arrays.sort(sorted);
      int index = random.nextInt(count);
      assertThat(SpectrumPeaks.smallest(x, count, index)).isEqualTo(sorted[index]);
    }
  }
}
