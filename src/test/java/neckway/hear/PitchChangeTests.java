package neckway.hear;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The change is put in at a frame of our own choosing. */
class PitchChangeTests {
  private static final double RATE_HZ = 11_025;
  private static final int CHANGE = 2000;

  /**
   * Two sines in one phase, one after the other, no step between (a hammer-on without an attack).
   * The comb of the old period leaves nothing before the change and something from it on.
   */
  @ParameterizedTest
  @CsvSource({"45, 47", "45, 48", "52, 50", "57, 60", "64, 67", "40, 43"})
  void findsWhereAPeriodEnds(int from, int to) {
    PitchChange change = new PitchChange(RATE_HZ);
    float[] y = glued(from, to);
    for (double later : new double[] {0.020, 0.030, 0.040}) {
      int found = change.find(y, CHANGE + (int) (later * RATE_HZ), RATE_HZ / Sounds.hz(from));
      assertThat(1000 * (found - CHANGE) / RATE_HZ)
          .as("ms, seen %.3f s later", later)
          .isCloseTo(0, within(4.0));
      assertThat(change.gain()).isGreaterThan(15);
    }
  }

  /**
   * The comb of the new period, looking forward, leaves something up to the change and nothing
   * after.
   */
  @ParameterizedTest
  @CsvSource({"45, 47", "45, 48", "52, 50", "57, 60", "64, 67", "64, 63"})
  void findsWhereAPeriodSetsIn(int from, int to) {
    PitchChange change = new PitchChange(RATE_HZ);
    float[] y = glued(from, to);
    for (double later : new double[] {0.040, 0.060, 0.080}) {
      int found = change.findArrival(y, CHANGE + (int) (later * RATE_HZ), RATE_HZ / Sounds.hz(to));
      assertThat(1000 * (found - CHANGE) / RATE_HZ)
          .as("ms, seen %.3f s later", later)
          .isCloseTo(0, within(4.0));
      assertThat(change.gain()).isGreaterThan(20);
    }
  }

  /** Nothing changes: the comb leaves as little at the end as at the start. */
  @Test
  void oneNoteThatGoesOnIsNoChange() {
    PitchChange change = new PitchChange(RATE_HZ);
    float[] y = glued(45, 45);
    Sounds.addNoise(y, 0, y.length, 1e-3, 1);
    change.find(y, CHANGE, RATE_HZ / Sounds.hz(45));
    assertThat(change.gain()).isLessThan(15);
  }

  private static float[] glued(int from, int to) {
    float[] y = new float[3000];
    double[] angles = new double[4];
    for (int i = 0; i < y.length; i++) {
      double hz = Sounds.hz(i < CHANGE ? from : to);
      for (int k = 1; k < 4; k++) {
        y[i] += (float) (0.3 / k * Math.sin(angles[k] + k));
        angles[k] += 2 * Math.PI * k * hz / RATE_HZ;
      }
    }
    return y;
  }
}
