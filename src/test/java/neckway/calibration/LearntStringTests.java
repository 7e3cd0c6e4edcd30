package neckway.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import neckway.hear.RobustStatistics;
import neckway.string.StiffnessCurve;
import neckway.string.StringProfile;
import neckway.string.Telling;
import org.junit.jupiter.api.Test;

class LearntStringTests {
  private static LearntString learnt(double error, double... lns) {
    return new LearntString(
        40,
        DoubleStream.of(lns)
            .mapToObj(ln -> new Pluck(0, 40, Optional.of(Plucked.bell(ln, error))))
            .map(pluck -> new LearntString.At(0, pluck))
            .toList());
  }

  /**
   * By hand: with a normal error of 0.4, against which the straying of at most 0.3 from note to
   * note counts little, four plucks give their mean, known to about 0.4 / sqrt 4 = 0.2.
   */
  @Test
  void unsurePlucksAreAveraged() {
    LearntString learnt = learnt(0.4, -9.3, -9.1, -8.9, -8.7);
    assertThat(learnt.lnStiffness).isCloseTo(-9, within(0.02));
    assertThat(learnt.spread).isBetween(0.2, 0.26);
    assertThat(learnt.odd).isEmpty();
  }

  @Test
  void fretsAreBroughtDownToTheOpenString() {
    List<LearntString.At> plucks =
        List.of(
            new LearntString.At(0, new Pluck(0, 40, Optional.of(Plucked.bell(-9, 0.02)))),
            new LearntString.At(
                12, new Pluck(1, 52, Optional.of(Plucked.bell(-9 + Math.log(4), 0.02)))));
    assertThat(new LearntString(40, plucks).lnStiffness).isCloseTo(-9, within(1e-3));
  }

  @Test
  void fewPlucksAreTrustedLessThanMany() {
    assertThat(learnt(0.02, -9, -9).spread).isGreaterThan(learnt(0.02, -9, -9, -9, -9).spread);
  }

  @Test
  void whatIsWrongWithAllPlucksAlikeIsNotAveragedAway() {
    StiffnessCurve sharp = Plucked.bell(-9, 0.02);
    StiffnessCurve biased =
        new StiffnessCurve() {
          @Override
          public double logLikelihood(double lnStiffness) {
            return sharp.logLikelihood(lnStiffness);
          }

          @Override
          public double commonError(double lnStiffness) {
            return 0.3;
          }
        };
    LearntString.At pluck = new LearntString.At(0, new Pluck(0, 40, Optional.of(biased)));
    LearntString learnt = new LearntString(40, List.of(pluck, pluck, pluck, pluck));
    assertThat(learnt.spread).isBetween(0.3, 0.31);
  }

  @Test
  void stringThatStraysFromNoteToNoteIsTrustedLess() {
    assertThat(learnt(0.02, -9.1, -8.9, -9.1, -8.9).spread)
        .isGreaterThan(1.5 * learnt(0.02, -9, -9, -9, -9).spread);
  }

  /**
   * By hand: sharp plucks of two frets 0.2 apart are each 0.2 from where the other puts it; beside
   * two more as expected the spread is at least 0.2 / sqrt 2.
   */
  @Test
  void fretsThatDisagreeMakeTheStringUnsure() {
    assertThat(ofTwoFrets(-9, -8.8).spread).isGreaterThan(0.14);
    assertThat(ofTwoFrets(-9, -9).spread).isLessThan(0.06);
  }

  private static LearntString ofTwoFrets(double lnOpen, double lnByTwelfth) {
    double up = 12 * StringProfile.LN_PER_FRET;
    return new LearntString(
        40,
        List.of(
            new LearntString.At(0, new Pluck(0, 40, Optional.of(Plucked.bell(lnOpen, 0.01)))),
            new LearntString.At(
                12, new Pluck(1, 52, Optional.of(Plucked.bell(lnByTwelfth + up, 0.01))))));
  }

  @Test
  void oneOfFourThatIsOddIsLeftOut() {
    LearntString learnt = learnt(0.02, -9, -9.01, -8.99, -7);
    assertThat(learnt.lnStiffness).isCloseTo(-9, within(0.005));
    assertThat(learnt.odd).hasSize(1);
    assertThat(learnt.used).hasSize(3);
  }

  @Test
  void twoThatDisagreeLeaveTheStringUnsure() {
    assertThat(learnt(0.02, -9, -8.3).doubt).isGreaterThan(CalibrationFindings.UNSURE_DOUBT);
    assertThat(learnt(0.02, -9, -9).doubt).isLessThan(0.01);
  }

  /** A likelihood with two humps tells little by itself; another pluck says which is right. */
  @Test
  void humpsOfOnePluckAreSettledByAnother() {
    StiffnessCurve humps =
        at ->
            Math.log(
                Math.exp(Plucked.bell(-9, 0.03).logLikelihood(at))
                    + 2 * Math.exp(Plucked.bell(-7.5, 0.03).logLikelihood(at)));
    StiffnessCurve broad = Plucked.bell(-9.2, 0.3);
    LearntString learnt =
        new LearntString(
            40,
            List.of(
                new LearntString.At(0, new Pluck(0, 40, Optional.of(humps))),
                new LearntString.At(0, new Pluck(1, 40, Optional.of(broad))),
                new LearntString.At(0, new Pluck(2, 40, Optional.of(broad)))));
    assertThat(learnt.lnStiffness).isCloseTo(-9, within(0.05));
  }

  @Test
  void medianByHand() {
    assertThat(RobustStatistics.median(List.of(1.0, 3.0, 2.0))).isEqualTo(2);
    assertThat(RobustStatistics.median(List.of(4.0, 1.0))).isEqualTo(2.5);
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
