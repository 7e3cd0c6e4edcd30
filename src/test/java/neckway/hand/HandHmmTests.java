package neckway.hand;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Optional;
import java.util.Random;
import neckway.drill.Drills;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.Route;
import neckway.neck.Tuning;
import org.junit.jupiter.api.Test;

class HandHmmTests {
  private static final int LAST = 6;

  private static final Route ROUTE = Drills.example(5, 5, 1).route();
  private final StandMap map = new StandMap(ROUTE, Tuning.STANDARD, 22);

  private HandHmm decoder(long seed) {
    Random random = new Random(seed);
    HandHmm decoder = new HandHmm(map, 0, ShiftPrior.USUAL);
    for (int step = 0; step <= LAST; step++) {
      if (step == 5) {
        decoder.leftOut(step, false);
        continue;
      }
      double[] log = new double[6];
      Arrays.setAll(log, i -> -3 * random.nextDouble());
      decoder.heard(step, Optional.of(Evidence.of(log)));
    }
    decoder.tied(3);
    return decoder;
  }

  /** The same sums over every one of the 4^7 ways that the hand may have gone. */
  @Test
  void forwardBackwardIsTheSumOverAllWays() {
    HandHmm decoder = decoder(4);
    StandPosterior estimate = decoder.solve(LAST);
    int n = map.stands();
    double[][] stand = new double[LAST + 1][n];
    double upOnTheFifth = 0;
    double total = 0;
    int shows = map.shows(Direction.UP, 0, new GuitarString(5));
    for (int way = 0; way < Math.pow(n, LAST + 1); way++) {
      int[] s = new int[LAST + 1];
      int rest = way;
      for (int t = 0; t <= LAST; t++) {
        s[t] = rest % n;
        rest /= n;
      }
      double log = decoder.start(s[0]) + decoder.emission[0][s[0]];
      for (int t = 1; t <= LAST; t++) {
        log += Math.log(decoder.move(t, s[t - 1], s[t])) + decoder.emission[t][s[t]];
      }
      double p = Math.exp(log);
      total += p;
      for (int t = 0; t <= LAST; t++) {
        stand[t][s[t]] += p;
      }
      if (s[shows - 1] + StandMap.LOWEST == 0 && s[shows] + StandMap.LOWEST == 1) {
        upOnTheFifth += p;
      }
    }
    for (int t = 0; t <= LAST; t++) {
      for (int s = 0; s < n; s++) {
        assertThat(estimate.stand(t, s + StandMap.LOWEST))
            .isEqualTo(stand[t][s] / total, within(1e-9));
      }
    }
    assertThat(estimate.shifted(Direction.UP, 0, new GuitarString(5)))
        .isEqualTo(upOnTheFifth / total, within(1e-9));
  }

  @Test
  void probabilitiesOfEveryStepSumToOne() {
    for (int seed = 0; seed < 20; seed++) {
      StandPosterior estimate = decoder(seed).solve(LAST);
      for (int t = 0; t <= LAST; t++) {
        assertThat(estimate.below(t, map.stands() + StandMap.LOWEST)).isEqualTo(1, within(1e-9));
      }
    }
  }

  @Test
  void movesOutOfEachStandAreCertainToGoSomewhere() {
    HandHmm decoder = new HandHmm(map, 0, ShiftPrior.USUAL);
    for (int step = 1; step < map.steps(); step++) {
      for (int from = 0; from < map.stands(); from++) {
        double sum = 0;
        for (int to = 0; to < map.stands(); to++) {
          sum += decoder.move(step, from, to);
        }
        assertThat(sum).isEqualTo(1, within(0.005));
      }
    }
  }

  /** With nothing but pitches, what is thought before the run is what comes out. */
  @Test
  void withoutEvidenceTheFirstThoughtStands() {
    HandHmm decoder = new HandHmm(map, 0, ShiftPrior.USUAL);
    for (int step = 0; step < map.steps(); step++) {
      decoder.heard(step, Optional.empty());
    }
    StandPosterior estimate = decoder.solve(map.steps() - 1);
    double made = 1 - ShiftPrior.USUAL.missed();
    assertThat(estimate.shifted(Direction.UP, 0, new GuitarString(5)))
        .isEqualTo(ShiftPrior.USUAL.planned() / made, within(0.03));
    assertThat(estimate.shifted(Direction.UP, 0, new GuitarString(4)))
        .isEqualTo(ShiftPrior.USUAL.on(false, 6) / made, within(0.03));
  }
}
