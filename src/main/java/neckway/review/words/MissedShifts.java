package neckway.review.words;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import neckway.hand.ShiftVerdict;
import neckway.neck.Direction;
import neckway.neck.PlannedShift;
import neckway.neck.Shape;
import neckway.review.ReviewedShift;
import neckway.words.Wording;

/** Says which shifts were missed, and knows which steps that put out of reach. */
final class MissedShifts {
  /** A shift of every round: which pair of shapes, and which way. */
  record Kind(Direction direction, int pair) {
    static Kind of(PlannedShift shift) {
      return new Kind(shift.direction(), shift.pair());
    }
  }

  private final Played played;
  private final List<PlannedShift> missed;

  MissedShifts(Played played) {
    this.played = played;
    this.missed = played.shifts(ShiftVerdict.MISSED).stream().map(ReviewedShift::planned).toList();
  }

  List<Sentence> sentences() {
    List<Sentence> said = new ArrayList<>();
    byKind()
        .forEach(
            (kind, shifts) ->
                said.add(
                    Sentence.of(
                        kind.direction() == Direction.UP ? up(kind, shifts) : down(kind, shifts),
                        shifts.stream().map(PlannedShift::landingStep).toList())));
    return said;
  }

  /**
   * The shifts that were missed themselves, by their kind. Whoever never went up has nothing to
   * come down from, nor the way further up: these follow from the first.
   */
  Map<Kind, List<PlannedShift>> byKind() {
    Map<Kind, List<PlannedShift>> kinds = new LinkedHashMap<>();
    for (PlannedShift shift : missed) {
      if (!follows(shift)) {
        kinds.computeIfAbsent(Kind.of(shift), k -> new ArrayList<>()).add(shift);
      }
    }
    return kinds;
  }

  private boolean follows(PlannedShift shift) {
    int pair = shift.pair();
    return shift.direction() == Direction.UP
        ? missed(shift.round(), Direction.UP, pair - 1)
        : missed(shift.round(), Direction.UP, pair)
            || missed(shift.round(), Direction.DOWN, pair + 1);
  }

  private boolean missed(int round, Direction direction, int pair) {
    return missed.stream()
        .anyMatch(m -> m.round() == round && m.direction() == direction && m.pair() == pair);
  }

  private String up(Kind kind, List<PlannedShift> shifts) {
    boolean noneDown =
        shifts.stream().allMatch(s -> missed(s.round(), Direction.DOWN, kind.pair()));
    String rounds = rounds(shifts);
    String key =
        (rounds.isEmpty() ? "missed.up" : "missed.up.rounds") + (noneDown ? ".noneDown" : "");
    return Wording.capital(
        Wording.of(key, shape(kind.pair()), shape(kind.pair() + 1), rounds.strip()));
  }

  private String down(Kind kind, List<PlannedShift> shifts) {
    return Wording.of("missed.down", shape(kind.pair() + 1), shape(kind.pair()), rounds(shifts));
  }

  private String rounds(List<PlannedShift> shifts) {
    return Phrases.inRounds(shifts.stream().map(PlannedShift::round).toList(), played.rounds());
  }

  private String shape(int index) {
    Shape shape = played.drill().shapes().get(index);
    return Phrases.shape(shape);
  }

  /** Whether a step could not be reached because a shift was missed. */
  boolean explain(int step) {
    return missed.stream().anyMatch(shift -> outOfReach(shift, step));
  }

  private boolean outOfReach(PlannedShift shift, int step) {
    int above = played.drill().shapes().size() - 1 - shift.pair();
    boolean top =
        missed(shift.round(), Direction.UP, shift.pair())
            && Math.abs(step - played.top(shift.round())) < above + 1;
    int bottom = (shift.round() + 1) * 2 * played.half();
    boolean low =
        shift.direction() == Direction.DOWN
            && !missed(shift.round(), Direction.UP, shift.pair())
            && Math.abs(step - bottom) <= shift.pair();
    return top || low;
  }
}
