package neckway.practice;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import neckway.drill.Drills;
import neckway.drill.PlayableDrill;
import neckway.follow.Verdict;
import neckway.hand.ShiftVerdict;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.Shape;
import neckway.review.Clock;
import neckway.review.Grid;
import neckway.review.GuitarKnown;
import neckway.review.Review;
import neckway.review.ReviewedNote;
import neckway.review.ReviewedShift;
import neckway.review.ReviewedStep;
import neckway.review.StepVerdict;
import neckway.review.Summary;
import neckway.review.TakeFigures;
import neckway.review.Timing;
import org.junit.jupiter.api.Test;

/** What the rounds of a run exercised, on reviews that are made up. */
final class RoundsOfRunTests {
  private static final OffsetDateTime WHEN = OffsetDateTime.parse("2026-05-01T23:30:00-05:00");

  /** G major, major to Dorian from fret 3, up on string 3 and down on string 5. */
  private static final PlayableDrill DRILL = Drills.example();

  private static final int UP_LANDS = DRILL.route().shifts().get(0).landingStep();

  private static Review review(
      PlayableDrill drill, IntPredicate wrong, ShiftVerdict up, OptionalInt string, double lateMs) {
    double slot = drill.pulse().slotSeconds();
    List<ReviewedNote> notes =
        IntStream.range(0, drill.route().steps().size())
            .mapToObj(
                s ->
                    new ReviewedNote(
                        s * slot,
                        drill.route().steps().get(s).midi(),
                        0,
                        wrong.test(s) ? Verdict.WRONG : Verdict.RIGHT,
                        OptionalInt.of(s),
                        0,
                        s,
                        0,
                        Timing.ON,
                        s * slot,
                        List.of()))
            .toList();
    List<ReviewedStep> steps =
        drill.route().steps().stream()
            .map(
                s ->
                    new ReviewedStep(
                        s,
                        s.index() * slot,
                        wrong.test(s.index()) ? StepVerdict.WRONG : StepVerdict.PLAYED))
            .toList();
    List<ReviewedShift> shifts =
        drill.route().shifts().stream()
            .map(
                planned ->
                    new ReviewedShift(
                        planned,
                        planned.direction() == Direction.UP ? up : ShiftVerdict.MADE,
                        planned.direction() == Direction.UP && string.isPresent()
                            ? Optional.of(new GuitarString(string.getAsInt()))
                            : Optional.of(planned.string()),
                        OptionalDouble.empty(),
                        OptionalDouble.of(planned.direction() == Direction.UP ? lateMs : 0),
                        OptionalDouble.empty()))
            .toList();
    return new Review(
        new TakeFigures(60, 48_000, -6, -70, OptionalDouble.empty()),
        GuitarKnown.LEARNT,
        Clock.MEASURED,
        new Grid(Grid.Source.GIVEN, drill.pulse().tempo(), 0, slot),
        notes,
        1,
        0,
        steps,
        shifts,
        new Summary(
            0, 0, 0, 0, 0, 0, OptionalDouble.empty(), OptionalDouble.empty(), 0, 0, List.of()));
  }

  private static List<PlayedRound> rounds(
      IntPredicate wrong, ShiftVerdict up, OptionalInt string, double lateMs) {
    return RoundsOfRun.of(DRILL, review(DRILL, wrong, up, string, lateMs), WHEN);
  }

  private static List<PlayedRound> made(IntPredicate wrong) {
    return rounds(wrong, ShiftVerdict.MADE, OptionalInt.empty(), 0);
  }

  private static Exercise up(int string, int finger) {
    return new Exercise.OfJoin(Shape.MAJOR, Shape.DORIAN, Direction.UP, string, finger);
  }

  @Test
  void joinsAreExercisedUpAndDownOnTheDayOfThePlayer() {
    List<PlayedRound> rounds = made(s -> false);
    assertThat(rounds).hasSize(2).allMatch(PlayedRound::clean);
    assertThat(rounds.get(0).exercise()).isEqualTo(up(3, 1));
    assertThat(rounds.get(0).day()).isEqualTo(LocalDate.of(2026, 5, 1));
    assertThat(rounds.get(0).tempo()).isEqualTo(80);
  }

  @Test
  void onlyTheNotesAroundALandingAreAsked() {
    assertThat(made(s -> s == UP_LANDS - 4).get(0).clean()).isFalse();
    assertThat(made(s -> s == UP_LANDS + 4).get(0).clean()).isFalse();
    assertThat(made(s -> s == UP_LANDS - 5).get(0).clean()).isTrue();
    assertThat(made(s -> s == UP_LANDS + 5).get(0).clean()).isTrue();
  }

  @Test
  void shiftMadeElsewhereIsARoundOfBothJoins() {
    List<PlayedRound> rounds = rounds(s -> false, ShiftVerdict.MOVED, OptionalInt.of(4), 0);
    assertThat(rounds).hasSize(3);
    assertThat(rounds.get(0).exercise()).isEqualTo(up(3, 1));
    assertThat(rounds.get(0).clean()).isFalse();
    // common practice, no published source: on string 4 the fourth finger leads
    assertThat(rounds.get(1).exercise()).isEqualTo(up(4, 4));
    assertThat(rounds.get(1).clean()).isTrue();
  }

  @Test
  void missedIsNotCleanUnheardIsNoFaultAndUnplayedIsNoRound() {
    assertThat(rounds(s -> false, ShiftVerdict.MISSED, OptionalInt.empty(), 0).get(0).clean())
        .isFalse();
    assertThat(rounds(s -> false, ShiftVerdict.UNHEARD, OptionalInt.empty(), 0).get(0).clean())
        .isTrue();
    assertThat(rounds(s -> false, ShiftVerdict.UNPLAYED, OptionalInt.empty(), 0)).hasSize(1);
  }

  /** The larger of 40 ms and 15 % of a slot of 375 ms: 56.25 ms. */
  @Test
  void lateLandingIsNotCleanAndAnEarlyOneIs() {
    assertThat(rounds(s -> false, ShiftVerdict.MADE, OptionalInt.empty(), 56).get(0).clean())
        .isTrue();
    assertThat(rounds(s -> false, ShiftVerdict.MADE, OptionalInt.empty(), 57).get(0).clean())
        .isFalse();
    assertThat(rounds(s -> false, ShiftVerdict.MADE, OptionalInt.empty(), -200).get(0).clean())
        .isTrue();
  }
}
