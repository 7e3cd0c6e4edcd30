package neckway.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import neckway.bench.NoteMatching.Criterion;
import neckway.bench.NoteMatching.Note;
import neckway.bench.NoteMatching.Score;
import org.junit.jupiter.api.Test;

class NoteMatchingTests {
  /**
   * Worked example in mir_eval's own tests of its note measures (REF and EST, with their scores).
   */
  private static final List<Note> REFERENCE =
      List.of(
          note(0.100, 0.300, 220.000),
          note(0.300, 0.400, 246.942),
          note(0.500, 0.600, 277.183),
          note(0.550, 0.650, 293.665));

  private static final List<Note> ESTIMATE =
      List.of(
          note(0.120, 0.290, 225.000),
          note(0.300, 0.340, 246.942),
          note(0.500, 0.600, 500.000),
          note(0.550, 0.600, 293.665),
          note(0.560, 0.650, 293.665));

  private static Note note(double onset, double offset, double hz) {
    return new Note(onset, offset, 69 + 12 * Math.log(hz / 440) / Math.log(2));
  }

  @Test
  void workedExampleOfMirEval() {
    check(Criterion.ONSET_PITCH_OFFSET, 0.4, 0.5, 0.4444);
    check(Criterion.ONSET_PITCH, 0.6, 0.75, 0.6667);
    check(Criterion.ONSET, 0.8, 1.0, 0.8889);
  }

  private static void check(Criterion what, double precision, double recall, double f1) {
    Score score = NoteMatching.score(REFERENCE, ESTIMATE, 0.05, what);
    assertThat(score.precision()).isEqualTo(precision, within(5e-5));
    assertThat(score.recall()).isEqualTo(recall, within(5e-5));
    assertThat(score.f1()).isEqualTo(f1, within(5e-5));
  }

  @Test
  void fiftyMillisecondsMatchExactlyAndNoMore() {
    List<Note> truth = List.of(Note.at(1.0, 60));
    assertThat(pairs(truth, List.of(Note.at(1.05, 60)))).isEqualTo(1);
    assertThat(pairs(truth, List.of(Note.at(1.0502, 60)))).isZero();
    assertThat(pairs(truth, List.of(Note.at(1.0, 60.5)))).isEqualTo(1);
    assertThat(pairs(truth, List.of(Note.at(1.0, 60.51)))).isZero();
  }

  @Test
  void theMatchingIsALargestOneWhereGreedyWouldLoseAPair() {
    // the nearest partner of the first is the only one of the second
    List<Note> truth = List.of(Note.at(1.00, 60), Note.at(1.05, 60));
    List<Note> heard = List.of(Note.at(0.96, 60), Note.at(1.01, 60));
    assertThat(pairs(truth, heard)).isEqualTo(2);
  }

  @Test
  void nothingHeardOrNothingPlayedScoresZero() {
    assertThat(NoteMatching.score(List.of(), List.of(), 0.05, Criterion.ONSET).f1()).isZero();
    assertThat(NoteMatching.score(REFERENCE, List.of(), 0.05, Criterion.ONSET).f1()).isZero();
  }

  private static int pairs(List<Note> truth, List<Note> heard) {
    return NoteMatching.score(truth, heard, 0.05, Criterion.ONSET_PITCH).matched();
  }
}
