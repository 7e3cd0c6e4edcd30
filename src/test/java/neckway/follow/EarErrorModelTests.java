package neckway.follow;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import neckway.drill.Pulse;
import neckway.hear.HeardNote;
import neckway.hear.HeardNote.Start;
import neckway.neck.Neck;
import neckway.neck.Route;
import neckway.neck.Tuning;
import neckway.review.Attempt;
import neckway.review.StepVerdict;
import org.junit.jupiter.api.Test;

/** Where the ear is likely to be wrong, nothing is told; where it is not, all is. */
class EarErrorModelTests {
  private static final double GAP = 0.375;
  private static final double FIRST = 2;
  private static final double QUICK = 0.02;
  private static final double UNSURE = 0.05;
  private static final double SLOW = 0.09;
  private static final Pulse PULSE = new Pulse(80, 2, 4, 4);

  private final Route route = Routes.example();
  private final List<HeardNote> notes = new ArrayList<>();
  private final List<NoteVerdict> told = new ArrayList<>();
  private final List<Integer> unnamed = new ArrayList<>();

  private int midi(int step) {
    return route.steps().get(step).midi();
  }

  private void at(double slot, double pitch, Start start, double dbfs, double earDelay) {
    double time = FIRST + slot * GAP;
    int midi = (int) Math.round(pitch);
    notes.add(new HeardNote(notes.size(), time, midi, pitch, start, true, dbfs, time + earDelay));
  }

  private void play(int from, int to) {
    for (int s = from; s <= to; s++) {
      at(s, midi(s), Start.PLUCK, -20, QUICK);
    }
  }

  private String follow() {
    Follower follower =
        new Follower(
            route,
            PULSE,
            Compass.of(Tuning.STANDARD, Neck.USUAL_FRETS),
            OptionalDouble.of(FIRST),
            new VerdictListener() {
              @Override
              public void decided(NoteVerdict verdict) {
                told.add(verdict);
              }

              @Override
              public void unnamed(int attempt, int step) {
                unnamed.add(step);
              }
            });
    for (HeardNote note : notes) {
      follower.listenedUntil(note.decided());
      follower.heard(note);
    }
    follower.finish(FIRST + 30 * GAP);
    StringBuilder slips = new StringBuilder();
    for (NoteVerdict v : told) {
      if (v.verdict() != Verdict.RIGHT) {
        slips.append(v.verdict().word()).append(' ');
      }
    }
    return slips.toString().trim();
  }

  private StepVerdict step(int step) {
    return Attempt.standing(
            told, unnamed.stream().map(s -> new UnnamedStep(0, s)).toList(), route.steps().size())
        .verdict(step);
  }

  @Test
  void anOctaveBelowTheStepDueAndSlowToBeNamedIsNoMistake() {
    play(0, 8);
    at(9, midi(9) - 12, Start.PLUCK, -20, SLOW);
    play(10, 14);
    assertThat(follow()).isEmpty();
    assertThat(unnamed).containsExactly(9);
    assertThat(told).hasSize(14);
    assertThat(step(9)).isEqualTo(StepVerdict.PLAYED);
  }

  @Test
  void anOctaveToEitherSideInTimeIsNeitherRightNorWrong() {
    play(0, 5);
    at(6, midi(6) + 12, Start.PLUCK, -20, UNSURE);
    play(7, 8);
    at(9, midi(9) - 12, Start.PLUCK, -20, UNSURE);
    play(10, 14);
    assertThat(follow()).isEmpty();
    assertThat(unnamed).containsExactly(6, 9);
    assertThat(told).noneMatch(v -> v.step().orElse(0) == 6 || v.step().orElse(0) == 9);
    assertThat(step(9)).isEqualTo(StepVerdict.PLAYED);
  }

  @Test
  void anOctaveHeardWithoutDoubtIsWrong() {
    play(0, 5);
    at(6, midi(6) + 12, Start.PLUCK, -20, QUICK);
    play(7, 8);
    at(9, midi(9) - 12, Start.PLUCK, -20, QUICK);
    play(10, 14);
    assertThat(follow()).isEqualTo("wrong wrong");
    assertThat(step(9)).isEqualTo(StepVerdict.WRONG);
  }

  @Test
  void aTwelfthBelowHeardWithoutDoubtIsWrong() {
    play(0, 8);
    at(9, midi(9) - 19, Start.PLUCK, -20, QUICK);
    play(10, 14);
    assertThat(follow()).isEqualTo("wrong");
    assertThat(step(9)).isEqualTo(StepVerdict.WRONG);
  }

  @Test
  void anOctaveOutOfTimeIsExtra() {
    play(0, 8);
    at(8.5, midi(9) - 12, Start.PLUCK, -20, QUICK);
    play(9, 14);
    assertThat(follow()).isEqualTo("extra");
  }

  @Test
  void aRunPlayedAnOctaveHigherIsNotLetPass() {
    play(0, 3);
    for (int s = 4; s <= 14; s++) {
      at(s, midi(s) + 12, Start.PLUCK, -20, UNSURE);
    }
    follow();
    assertThat(unnamed).containsExactly(4, 5);
    assertThat(told).filteredOn(v -> v.verdict() == Verdict.RIGHT).hasSizeLessThanOrEqualTo(5);
  }

  @Test
  void aStepNamedAtLastIsNotStruckTwice() {
    play(0, 8);
    at(9, midi(9) - 12, Start.PLUCK, -20, SLOW);
    at(9.01, midi(9), Start.LEGATO, -20, 0.17);
    play(10, 14);
    assertThat(follow()).isEmpty();
    assertThat(unnamed).containsExactly(9);
  }

  @Test
  void whatTheGuitarCannotPlayIsNotItsPlayers() {
    play(0, 8);
    at(8.4, 34, Start.PLUCK, -20, QUICK);
    at(9, 29, Start.PLUCK, -20, QUICK);
    play(10, 11);
    at(11.02, 31, Start.LEGATO, -20, 0.05);
    play(12, 14);
    assertThat(follow()).isEmpty();
    assertThat(unnamed).containsExactly(9);
    assertThat(told).hasSize(14);
  }

  @Test
  void theLastFretOfTheGuitarIsItsPlayersAndNoHigher() {
    Compass guitar = Compass.of(Tuning.parse("D2 A2 D3 G3 B3 E4"), 22);
    assertThat(guitar).isEqualTo(new Compass(38, 86));
    assertThat(guitar.has(86)).isTrue();
    assertThat(guitar.has(87)).isFalse();
    assertThat(guitar.has(37)).isFalse();
  }

  @Test
  void betweenTwoSemitonesIsNotToldAsWrongAndNeverAsRight() {
    play(0, 8);
    at(9, midi(9) - 0.6, Start.PLUCK, -20, SLOW);
    play(10, 14);
    assertThat(follow()).isEmpty();
    assertThat(told).noneMatch(v -> v.step().orElse(0) == 9);
    assertThat(step(9)).isEqualTo(StepVerdict.PLAYED);
  }

  @Test
  void aCleanSemitoneBesideIsWrong() {
    play(0, 8);
    at(9, midi(9) - 0.9, Start.PLUCK, -20, SLOW);
    play(10, 14);
    assertThat(follow()).isEqualTo("wrong");
  }

  @Test
  void aStringDampedIsNotStruckTwice() {
    play(0, 8);
    at(8.5, midi(8), Start.PLUCK, -25, SLOW);
    play(9, 14);
    assertThat(follow()).isEmpty();
    assertThat(unnamed).isEmpty();
  }

  @Test
  void noStringIsStruckTwiceWithinASixteenthOfASecond() {
    play(0, 8);
    at(8 + 0.055 / GAP, midi(8), Start.PLUCK, -25, QUICK);
    play(9, 11);
    at(11 + 0.08 / GAP, midi(11), Start.PLUCK, -25, QUICK);
    play(12, 14);
    assertThat(follow()).isEqualTo("repeat");
    assertThat(told).filteredOn(v -> v.verdict() == Verdict.REPEAT).hasSize(1);
    assertThat(told.stream().filter(v -> v.verdict() == Verdict.REPEAT).findFirst().orElseThrow())
        .satisfies(v -> assertThat(v.step()).hasValue(11));
  }

  @Test
  void aStringStruckTwiceIsToldAtOnce() {
    play(0, 8);
    at(8.5, midi(8), Start.PLUCK, -25, QUICK);
    play(9, 14);
    assertThat(follow()).isEqualTo("repeat");
  }

  @Test
  void aSecondNameForTheSameInstantReplacesTheFirst() {
    play(0, 8);
    at(9, midi(9) - 7, Start.PLUCK, -20, QUICK);
    at(9, midi(9), Start.LEGATO, -20, 0.15);
    play(10, 14);
    assertThat(follow()).isEmpty();
    assertThat(told).hasSize(15);
  }

  @Test
  void weakSoundsBeforeTheRunAreForgottenAndStrongOnesTold() {
    at(-4, 33, Start.PLUCK, -50, SLOW);
    at(-3, 80, Start.PLUCK, -22, QUICK);
    play(0, 14);
    assertThat(follow()).isEqualTo("extra");
    assertThat(told.get(0).note().midi()).isEqualTo(80);
    assertThat(told.get(0).decided()).isGreaterThanOrEqualTo(FIRST);
  }

  @Test
  void whatNeverBeginsIsToldAtTheEnd() {
    at(-4, 45, Start.PLUCK, -50, SLOW);
    assertThat(follow()).isEqualTo("extra");
  }
}
