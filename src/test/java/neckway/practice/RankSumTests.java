package neckway.practice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** The test of Mann and Whitney, held against hand counts and against SciPy. */
class RankSumTests {
  private static final double SCIPY = 0.038097346;

  @Test
  void allBelowIsOneOfAllWaysAndItsMirror() {
    RankSum test = new RankSum(new double[] {1, 2, 3}, new double[] {4, 5, 6});
    // by hand: of the 20 ways to choose 3 of 6 ranks, 1+2+3 and 4+5+6 lie as far out
    assertThat(test.p()).isCloseTo(2.0 / 20, within(1e-12));
    assertThat(test.isSmaller()).isTrue();
    assertThat(new RankSum(new double[] {4, 5, 6}, new double[] {1, 2, 3}).isSmaller()).isFalse();
  }

  @Test
  void twoAsidesOfFiveAndFive() {
    // by hand: U = 2 or less comes of 1 + 1 + 2 of the 252 ways, and as many on the other side
    RankSum test = new RankSum(new double[] {1, 2, 3, 4, 7}, new double[] {5, 6, 8, 9, 10});
    assertThat(test.p()).isCloseTo(8.0 / 252, within(1e-12));
  }

  @Test
  void allTheSameIsNoDifference() {
    assertThat(new RankSum(new double[] {5, 5}, new double[] {5, 5, 5}).p()).isEqualTo(1);
    double[] many = new double[80];
    assertThat(new RankSum(many, many).p()).isEqualTo(1);
  }

  @Test
  void beyondAHundredFiguresItIsTheNormalOneWithItsCorrections() {
    double[] mine = IntStream.range(0, 60).mapToDouble(i -> i % 17).toArray();
    double[] theirs = IntStream.range(0, 60).mapToDouble(i -> i % 17 + i % 5).toArray();
    // scipy 1.17.1: mannwhitneyu(x, y, method="asymptotic", use_continuity=True)
    assertThat(new RankSum(mine, theirs).p()).isCloseTo(SCIPY, within(1e-6));
  }

  /** Of lots that do not differ, no more than about one in twenty is said to. */
  @Test
  void chanceIsSaidToBeADifferenceAsOftenAsItShould() {
    Random random = new Random(3);
    int said = 0;
    int tries = 2000;
    for (int i = 0; i < tries; i++) {
      double[] one = random.doubles(25).toArray();
      double[] other = random.doubles(25).toArray();
      said += new RankSum(one, other).p() < 0.05 ? 1 : 0;
    }
    // 5 % of 2000 is 100, and 3 standard deviations of that are 29
    assertThat(said).isBetween(60, 130);
  }
}
