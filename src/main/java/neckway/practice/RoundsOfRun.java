package neckway.practice;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import neckway.drill.PlayableDrill;
import neckway.hand.ShiftVerdict;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.Join;
import neckway.neck.PlannedShift;
import neckway.review.CleanStretch;
import neckway.review.Landings;
import neckway.review.Review;
import neckway.review.ReviewedShift;

/** What the rounds of a run exercised: the shape where it is one alone, else its joins. */
public final class RoundsOfRun {
  /** A join is asked from so many steps before its landing to so many after. */
  private static final int AROUND = 4;

  private static final double NOTES_A_BEAT = 2;

  private final PlayableDrill drill;
  private final Review review;
  private final OffsetDateTime when;
  private final double tempo;
  private final CleanStretch clean;
  private final Landings landings;

  private RoundsOfRun(PlayableDrill drill, Review review, OffsetDateTime when) {
    this.drill = drill;
    this.review = review;
    this.when = when;
    this.tempo = review.grid().tempo() * drill.pulse().notesPerBeat() / NOTES_A_BEAT;
    this.clean = new CleanStretch(review);
    this.landings = new Landings(drill);
  }

  /** All rounds in which anything of an exercise was played, in the order met. */
  public static List<PlayedRound> of(PlayableDrill drill, Review review, OffsetDateTime when) {
    RoundsOfRun run = new RoundsOfRun(drill, review, when);
    return drill.shapes().size() == 1 ? run.ofShape() : run.ofJoins();
  }

  private List<PlayedRound> ofShape() {
    List<PlayedRound> rounds = new ArrayList<>();
    for (int round = 0; round < drill.rounds(); round++) {
      if (clean.anyPlayed(first(round), last(round))) {
        boolean faultless = clean.is(first(round), last(round));
        Exercise shape = new Exercise.OfShape(drill.shapes().get(0));
        rounds.add(round(shape, faultless, OptionalDouble.empty()));
      }
    }
    return rounds;
  }

  private int first(int round) {
    return round * (drill.route().stepsPerRound() - 1);
  }

  private int last(int round) {
    return first(round + 1);
  }

  private List<PlayedRound> ofJoins() {
    List<PlayedRound> rounds = new ArrayList<>();
    for (ReviewedShift shift : review.shifts()) {
      if (shift.verdict() == ShiftVerdict.UNPLAYED) {
        continue;
      }
      boolean asPlanned =
          shift.verdict() == ShiftVerdict.MADE || shift.verdict() == ShiftVerdict.UNHEARD;
      PlannedShift planned = shift.planned();
      Exercise plannedJoin = join(planned, planned.string(), planned.finger());
      rounds.add(round(plannedJoin, asPlanned && around(shift), shift.lateMs()));
      if (shift.verdict() == ShiftVerdict.MOVED) {
        elsewhere(shift).ifPresent(rounds::add);
      }
    }
    return rounds;
  }

  /** A shift that was made on another string exercised the join there. */
  private Optional<PlayedRound> elsewhere(ReviewedShift shift) {
    PlannedShift planned = shift.planned();
    GuitarString string = shift.string().orElseThrow();
    List<Join> there =
        drill.pairs().get(planned.pair()).stream().filter(j -> j.string().equals(string)).toList();
    return there.stream()
        .filter(j -> landing(j, planned.direction()) == planned.finger())
        .findFirst()
        .or(() -> there.stream().findFirst())
        .map(j -> join(planned, string, landing(j, planned.direction())))
        .map(join -> round(join, around(shift), shift.lateMs()));
  }

  private static int landing(Join join, Direction direction) {
    return direction == Direction.UP ? join.finger() : join.downFinger();
  }

  /** Whether the notes around a landing, where it was made, are without a fault and it in time. */
  private boolean around(ReviewedShift shift) {
    int landing = landings.step(shift);
    int round = shift.planned().round();
    int from = Math.max(first(round), landing - AROUND);
    int to = Math.min(last(round), landing + AROUND);
    return clean.isStretch(from, to) && clean.inTime(shift);
  }

  private Exercise join(PlannedShift shift, GuitarString string, int finger) {
    return new Exercise.OfJoin(
        drill.shapes().get(shift.pair()),
        drill.shapes().get(shift.pair() + 1),
        shift.direction(),
        string.number(),
        finger);
  }

  private PlayedRound round(Exercise exercise, boolean faultless, OptionalDouble lateMs) {
    return new PlayedRound(
        exercise, when.toInstant(), when.toLocalDate(), faultless, tempo, lateMs);
  }
}
