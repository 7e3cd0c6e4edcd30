package neckway.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.OptionalInt;
import neckway.drill.Drills;
import neckway.drill.PlayableDrill;
import neckway.follow.NoteVerdict;
import neckway.follow.Verdict;
import neckway.hear.HeardNote;
import org.junit.jupiter.api.Test;

/** When a round is over. */
class RoundEndTests {
  private static final PlayableDrill DRILL = Drills.example();
  private static final double STEP = 0.5;

  private static NoteVerdict note(Verdict verdict, double seconds, OptionalInt step) {
    HeardNote note =
        new HeardNote(0, seconds, 60, 60, HeardNote.Start.PLUCK, true, -20, seconds + 0.03);
    return new NoteVerdict(note, verdict, step, 0, seconds + 0.03);
  }

  private static void plays(RoundEnd end, int steps) {
    for (int step = 0; step < steps; step++) {
      end.heard(note(Verdict.RIGHT, STEP * step, OptionalInt.of(step)));
    }
  }

  @Test
  void overOneSecondAfterTheLastNote() {
    int all = DRILL.route().steps().size();
    RoundEnd end = new RoundEnd(DRILL, false);
    plays(end, all);
    double last = STEP * (all - 1);
    assertThat(end.reached(last + 0.9)).isFalse();
    assertThat(end.reached(last + 1.1)).isTrue();
  }

  @Test
  void overTenSecondsAfterThePlayerStopped() {
    RoundEnd end = new RoundEnd(DRILL, false);
    plays(end, 5);
    assertThat(end.reached(2 + 9.9)).isFalse();
    end.heard(note(Verdict.EXTRA, 6, OptionalInt.empty()));
    assertThat(end.reached(6 + 9.9)).isFalse();
    assertThat(end.reached(6 + 10.1)).isTrue();
  }

  @Test
  void whatLeaksOfABackingDoesNotKeepItGoing() {
    RoundEnd end = new RoundEnd(DRILL, true);
    plays(end, 5);
    for (double seconds = 2.5; seconds < 12; seconds += STEP) {
      end.heard(note(Verdict.EXTRA, seconds, OptionalInt.empty()));
    }
    assertThat(end.reached(2 + 9.9)).isFalse();
    assertThat(end.reached(2 + 10.1)).isTrue();
  }
}
