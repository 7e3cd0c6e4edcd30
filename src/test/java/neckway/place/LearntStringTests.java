package neckway.place;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

class LearntStringTests {
  private static List<LearntString.Value> values(double... lns) {
    return DoubleStream.of(lns)
        .mapToObj(
            ln ->
                LearntString.Value.of(
                    0, new Pluck(0, 40, Optional.of(new Pluck.Reading(ln, 0.001)))))
        .toList();
  }

  /** By hand: (3 * 0.05^2 + 2 * 0.1^2) / (3 + 1) = 0.006875 is the square of the evenness. */
  @Test
  void spreadIsTheUsualOneAndTheScatterTogether() {
    LearntString learnt = new LearntString(values(-9.1, -8.9));
    assertThat(learnt.lnStiffness).isCloseTo(-9, within(1e-9));
    double even = 0.006875;
    double mean = (0.05 * 0.05 + 1e-6) / 2;
    assertThat(learnt.spread).isCloseTo(Math.sqrt(even + mean), within(1e-4));
  }

  @Test
  void fewPlucksAreTrustedLessThanMany() {
    assertThat(new LearntString(values(-9, -9)).spread)
        .isGreaterThan(new LearntString(values(-9, -9, -9, -9)).spread);
  }

  @Test
  void oneOfFourThatIsOddIsLeftOut() {
    LearntString learnt = new LearntString(values(-9, -9.01, -8.99, -6));
    assertThat(learnt.lnStiffness).isCloseTo(-9, within(1e-9));
    assertThat(learnt.odd).singleElement().matches(v -> v.lnOpen() == -6);
  }

  @Test
  void twoThatDisagreeAreBothKeptAndTheStringIsUnsure() {
    LearntString learnt = new LearntString(values(-9, -7));
    assertThat(learnt.used).hasSize(2);
    assertThat(learnt.spread).isGreaterThan(CalibrationFindings.UNSURE_SPREAD);
  }

  /** By hand: weights 1, 1, 2 have their half, 2, at the bound of the second and the third. */
  @Test
  void weightedMedianByHand() {
    assertThat(Middle.of(List.of(1.0, 2.0, 3.0))).isEqualTo(2);
    assertThat(Middle.of(List.of(4.0, 1.0))).isEqualTo(2.5);
    assertThat(Middle.of(List.of(3.0, 1.0, 2.0), List.of(2.0, 1.0, 1.0)))
        .isCloseTo(2 + 0.5 / 1.5, within(1e-12));
    assertThat(Middle.of(List.of(5.0), List.of(2.0))).isEqualTo(5);
  }

  /**
   * Half-way bounds of the standard normal distribution: 1 % lies beyond 2.326 and 10 % beyond
   * 1.282 (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.1; values from memory).
   */
  @Test
  void pairsAreToldByTheChanceOfConfusingThem() {
    assertThat(Telling.of(4.66)).isEqualTo(Telling.WELL);
    assertThat(Telling.of(4.65)).isEqualTo(Telling.FAIRLY);
    assertThat(Telling.of(2.57)).isEqualTo(Telling.FAIRLY);
    assertThat(Telling.of(2.56)).isEqualTo(Telling.NOT);
  }
}
