package neckway.string;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import neckway.neck.GuitarString;
import neckway.neck.Place;
import org.junit.jupiter.api.Test;

class LessonsTests {
  private static final GuitarString THIRD = new GuitarString(3);
  private static final double CALIBRATED = Math.log(108e-6);
  private static final StringProfile STRING = new StringProfile(THIRD, 55, 0, CALIBRATED, 0.06, 4);
  private final Lessons lessons = new Lessons(new GuitarProfile(List.of(STRING)));

  /** A estimate of the third string, fret 6, whose B there is e^off times what is expected. */
  private static StiffnessEstimate estimate(double off, boolean driven) {
    double[] grid = new double[201];
    double[] clean = new double[201];
    double[] full = new double[201];
    for (int i = 0; i < grid.length; i++) {
      grid[i] = STRING.lnStiffnessAt(6) - 2 + 0.02 * i;
      double z = (grid[i] - STRING.lnStiffnessAt(6) - off) / 0.03;
      clean[i] = -0.5 * z * z - (driven ? 20 : 0);
      full[i] = -0.5 * z * z - (driven ? 0 : 20);
    }
    return new StiffnessEstimate(grid, clean, full, 0.5);
  }

  private void note(double p, double off, boolean driven) {
    lessons.note(new Place(THIRD, 6), p, estimate(off, driven));
  }

  /** By hand: ln B off by 0.04 and 0.08 at the sixth fret is 0.06 off at the open string. */
  @Test
  void bringsNotesDownToTheOpenString() {
    note(0.995, 0.04, false);
    note(0.999, 0.08, false);
    assertThat(lessons.all()).hasSize(1);
    assertThat(lessons.all().get(0).notes()).isEqualTo(2);
    assertThat(lessons.all().get(0).lnStiffness()).isEqualTo(CALIBRATED + 0.06, within(0.002));
  }

  @Test
  void learnsNothingFromWhatIsNotCertainNotCleanOrTooFarOff() {
    note(0.98, 0, false);
    note(0.999, 0, true);
    note(0.999, 0.4, false);
    assertThat(lessons.all()).isEmpty();
  }

  /** By hand: 4 plucks and 12 notes that are 0.04 off make 0.03. */
  @Test
  void calibrationAndRunsAreWeighedByTheirNotes() {
    Lesson lesson = new Lesson(THIRD, 12, CALIBRATED + 0.04);
    assertThat(lesson.with(STRING)).isEqualTo(CALIBRATED + 0.03, within(1e-12));
  }

  @Test
  void runsNeverCarryAStringFartherThanItStrays() {
    Lesson lesson = new Lesson(THIRD, 100_000, CALIBRATED + 0.5);
    assertThat(lesson.with(STRING)).isEqualTo(CALIBRATED + 0.06, within(1e-12));
    assertThat(new Lesson(THIRD, 100_000, CALIBRATED - 3).with(STRING))
        .isEqualTo(CALIBRATED - 0.06, within(1e-12));
  }

  /** A calibration that was off comes nearer to the truth with each run, and stays there. */
  @Test
  void manyRunsBringTheStringNearerToTheTruth() {
    Random random = new Random(5);
    double truth = CALIBRATED + 0.05;
    Lesson all = new Lesson(THIRD, 1, truth + 0.03 * random.nextGaussian());
    double before = Math.abs(CALIBRATED - truth);
    for (int run = 0; run < 50; run++) {
      for (int note = 0; note < 4; note++) {
        all = all.and(new Lesson(THIRD, 1, truth + 0.03 * random.nextGaussian()));
      }
      if (run > 2) {
        assertThat(Math.abs(all.with(STRING) - truth)).isLessThan(before / 2);
      }
    }
  }

  @Test
  void refusesALessonOfNoNotes() {
    assertThatThrownBy(() -> new Lesson(THIRD, 0, CALIBRATED))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Lesson(THIRD, 1, Double.NaN))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
