package neckway.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import neckway.follow.NoteVerdict;
import neckway.follow.UnnamedStep;
import neckway.follow.Verdict;
import neckway.hear.HeardNote;
import org.junit.jupiter.api.Test;

/** Half a second a slot, a route of nine steps, the run from second 10 on. */
class RunBoundsTests {
  private static final double SLOT = 0.5;
  private static final int STEPS = 9;
  private static final double BEGIN = 10;

  private final List<NoteVerdict> told = new ArrayList<>();
  private final Set<Integer> voices = new HashSet<>();

  private void note(double time, Verdict verdict, OptionalInt step, int attempt, double dbfs) {
    HeardNote heard =
        new HeardNote(told.size(), time, 50, 50, HeardNote.Start.PLUCK, true, dbfs, time + 0.03);
    told.add(new NoteVerdict(heard, verdict, step, attempt, time + 0.03));
  }

  private void extra(double time, int attempt) {
    note(time, Verdict.EXTRA, OptionalInt.empty(), attempt, -20);
  }

  private void voice(double time, int attempt) {
    voices.add(told.size());
    extra(time, attempt);
  }

  private void right(int step, int attempt, double begin) {
    note(begin + step * SLOT, Verdict.RIGHT, OptionalInt.of(step), attempt, -20);
  }

  private void run(int from, int to, int attempt, double begin) {
    for (int step = from; step <= to; step++) {
      right(step, attempt, begin);
    }
  }

  private RunBounds.Inside inside(OptionalDouble firstBeat, double seconds) {
    return new RunBounds(STEPS, SLOT, firstBeat, seconds, note -> !voices.contains(note))
        .of(told, List.of());
  }

  private List<Integer> kept() {
    return inside(OptionalDouble.empty(), 60).notes().stream().map(v -> v.note().index()).toList();
  }

  @Test
  void whatComesBeforeAndAfterIsNotInTheRun() {
    extra(2, 0);
    extra(3, 0);
    run(0, 8, 0, BEGIN);
    extra(20, 0);
    assertThat(kept()).containsExactly(2, 3, 4, 5, 6, 7, 8, 9, 10);
  }

  @Test
  void aStrayNoteFarWeakerThanTheRunIsNoneOfIt() {
    run(0, 4, 0, BEGIN);
    note(BEGIN + 4.5 * SLOT, Verdict.EXTRA, OptionalInt.empty(), 0, -25.5);
    note(BEGIN + 4.7 * SLOT, Verdict.EXTRA, OptionalInt.empty(), 0, -26.5);
    run(5, 8, 0, BEGIN);
    assertThat(kept()).containsExactly(0, 1, 2, 3, 4, 5, 7, 8, 9, 10);
  }

  @Test
  void aStrayNoteInTheRunIs() {
    run(0, 3, 0, BEGIN);
    extra(11.75, 0);
    run(4, 8, 0, BEGIN);
    extra(14.25, 0);
    assertThat(kept()).hasSize(11);
  }

  @Test
  void aStrayNoteOnTheWayToTheFirstStepIsTooAndWasDecidedWithIt() {
    extra(9.7, 0);
    run(0, 8, 0, BEGIN);
    RunBounds.Inside inside = inside(OptionalDouble.empty(), 60);
    assertThat(inside.notes()).hasSize(10);
    assertThat(inside.notes().get(0).decided()).isEqualTo(10.03);
  }

  @Test
  void aVoiceJustAfterTheLastStepIsNot() {
    run(0, 8, 0, BEGIN);
    voice(14.25, 0);
    assertThat(kept()).hasSize(9);
  }

  @Test
  void talkOpensNoTryAndTriesAreCountedWithoutIt() {
    note(3, Verdict.RIGHT, OptionalInt.of(0), 0, -20);
    extra(3.5, 0);
    run(0, 8, 1, BEGIN);
    note(20, Verdict.RIGHT, OptionalInt.of(0), 2, -20);
    note(20.2, Verdict.WRONG, OptionalInt.of(1), 2, -20);
    RunBounds.Inside inside = inside(OptionalDouble.empty(), 60);
    assertThat(inside.notes()).hasSize(9).allMatch(v -> v.attempt() == 0);
    assertThat(inside.toldAs()).containsExactly(1);
  }

  @Test
  void aFalseStartBeforeATryIsOne() {
    run(0, 1, 0, 3);
    run(0, 8, 1, BEGIN);
    assertThat(inside(OptionalDouble.empty(), 60).toldAs()).containsExactly(0, 1);
  }

  @Test
  void aTryThatHasJustBegunIsOneUnlessItIsMuchWeaker() {
    run(0, 8, 0, BEGIN);
    note(20, Verdict.RIGHT, OptionalInt.of(0), 1, -20);
    assertThat(inside(OptionalDouble.empty(), 20.1).toldAs()).containsExactly(0, 1);
    assertThat(inside(OptionalDouble.empty(), 30).toldAs()).containsExactly(0);
    told.remove(told.size() - 1);
    note(20, Verdict.RIGHT, OptionalInt.of(0), 1, -40);
    assertThat(inside(OptionalDouble.empty(), 20.1).toldAs()).containsExactly(0);
  }

  @Test
  void aWrongNoteInPlaceOfTheFirstStepIsInTheRun() {
    note(BEGIN, Verdict.WRONG, OptionalInt.of(0), 0, -20);
    run(1, 8, 0, BEGIN);
    assertThat(kept()).hasSize(9);
  }

  @Test
  void whatAStopIsTakenForIsNot() {
    run(0, 5, 0, BEGIN);
    note(17, Verdict.WRONG, OptionalInt.of(6), 0, -20);
    assertThat(kept()).hasSize(6);
  }

  @Test
  void afterAFirstBeatThatIsGivenStrayNotesAreInTheRun() {
    extra(BEGIN, 0);
    extra(5, 0);
    run(1, 8, 0, BEGIN);
    assertThat(inside(OptionalDouble.of(BEGIN), 60).notes()).hasSize(9);
  }

  @Test
  void whereNoTryCanBeToldEverythingIsKept() {
    extra(2, 0);
    run(0, 2, 0, BEGIN);
    extra(20, 0);
    assertThat(kept()).hasSize(5);
  }

  @Test
  void stepsHeardAndNotNamedGoWithTheirTry() {
    run(0, 1, 0, 3);
    note(3.2, Verdict.WRONG, OptionalInt.of(2), 0, -20);
    voices.add(2);
    run(0, 8, 1, BEGIN);
    RunBounds.Inside inside =
        new RunBounds(STEPS, SLOT, OptionalDouble.empty(), 60, note -> !voices.contains(note))
            .of(told, List.of(new UnnamedStep(0, 1), new UnnamedStep(1, 4)));
    assertThat(inside.unnamed()).containsExactly(new UnnamedStep(0, 4));
  }
}
