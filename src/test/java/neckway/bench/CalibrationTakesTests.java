package neckway.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import neckway.calibration.Calibrated;
import neckway.calibration.Calibration;
import neckway.calibration.Finding;
import neckway.neck.GuitarString;
import neckway.neck.Tuning;
import neckway.player.Performance;
import neckway.player.settings.Guitar;
import neckway.player.settings.PlayerSettings;
import neckway.player.settings.PlayerSettings.Condition;
import neckway.string.StringProfile;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

@Tag("slow")
class CalibrationTakesTests {
  /** Seeds that development does not use. */
  private static final long SEED = 2_000_041;

  @ParameterizedTest
  @EnumSource(Guitar.Model.class)
  void everySortOfVirtualGuitarIsLearnt(Guitar.Model model) {
    PlayerSettings player = CalibrationTakes.player(model, SEED, Condition.CLEAN);
    Performance played =
        CalibrationTakes.played(player, Tuning.STANDARD, Calibration.USUAL_FRETS, SEED);
    Calibrated learnt =
        CalibrationTakes.learnt(
            played.samples(), played.sampleRate(), Tuning.STANDARD, Calibration.USUAL_FRETS);
    for (StringProfile string : learnt.profile().strings()) {
      double truth = Math.log(player.guitar().stiffness().get(string.string().number() - 1));
      assertThat(string.lnStiffness() - truth)
          .as(model + ", string " + string.string())
          .isCloseTo(0, within(Math.max(0.08, 3 * string.spread())));
    }
  }

  /**
   * B of a solid-body electric from its lowest string up as another program measured it on the same
   * recordings: 132, 66, 49, 108, 40 and 14 millionths.
   */
  @Test
  void recordedGuitarIsLearntAsAnotherProgramMeasuredIt() throws IOException {
    Optional<RecordedNotes> notes = RecordedNotes.load();
    Assumptions.assumeTrue(notes.isPresent(), "no recorded notes here: not checked");
    List<Integer> frets = List.of(1, 3, 7, 12);
    for (int take = 0; take < 2; take++) {
      float[] samples = CalibrationTakes.recorded(notes.get().of("solidbody"), frets, take);
      Calibrated learnt =
          CalibrationTakes.learnt(samples, RecordedNotes.SAMPLE_RATE, Tuning.STANDARD, frets);
      double[] millionths = {132, 66, 49, 108, 40, 14};
      for (int number = 6; number >= 1; number--) {
        double b = Math.exp(learnt.profile().of(new GuitarString(number)).lnStiffness());
        assertThat(1e6 * b / millionths[6 - number])
            .as("string " + number)
            .isCloseTo(1, within(number == 1 ? 0.1 : 0.05));
      }
      assertThat(learnt.findings())
          .allMatch(f -> f.kind() == Finding.Kind.ALIKE || f.kind() == Finding.Kind.ODD_PLUCK);
    }
  }
}
