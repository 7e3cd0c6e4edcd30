package neckway.page;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import neckway.drill.PlayableDrill;
import neckway.hand.ShiftVerdict;
import neckway.neck.Direction;
import neckway.neck.Place;
import neckway.neck.PlacedNote;
import neckway.neck.PlannedShift;
import neckway.neck.Step;
import neckway.review.Landings;
import neckway.review.ReviewedShift;

/**
 * Which shape the hand was in at each step, by what was said of the shifts. Where nothing was said,
 * or the sound does not tell, it is where it was planned.
 */
final class HandWay {
  private final PlayableDrill drill;
  private final Landings landings;
  private final Map<PlannedShift, ReviewedShift> said;
  private final int[] stands;

  /**
   * @param said what became of each shift of which that is known
   */
  HandWay(PlayableDrill drill, Map<PlannedShift, ReviewedShift> said) {
    this.drill = drill;
    this.said = Map.copyOf(said);
    landings = new Landings(drill);
    stands = drill.route().steps().stream().mapToInt(Step::stand).toArray();
    if (drill.isCalled()) {
      return; // nothing is said of its shifts, and it has no rounds to follow
    }
    for (int round = 0; round < drill.rounds(); round++) {
      follow(round);
    }
  }

  private void follow(int round) {
    List<PlannedShift> shifts =
        drill.route().shifts().stream().filter(s -> s.round() == round).toList();
    int ofRound = drill.route().stepsPerRound() - 1;
    int bottom = round * ofRound;
    int top = bottom + ofRound / 2;
    for (int step = bottom; step <= top; step++) {
      stands[step] = comeUp(shifts, step);
    }
    for (int step = top + 1; step <= bottom + ofRound; step++) {
      stands[step] = comeDown(shifts, stands[top], step);
    }
  }

  /** The stand on the way up: a shift is only made from the stand below it. */
  private int comeUp(List<PlannedShift> shifts, int step) {
    int stand = 0;
    while (made(shifts, Direction.UP, stand, step)) {
      stand++;
    }
    return stand;
  }

  private int comeDown(List<PlannedShift> shifts, int highest, int step) {
    int stand = highest;
    while (made(shifts, Direction.DOWN, stand - 1, step)) {
      stand--;
    }
    return stand;
  }

  /** Whether there is such a shift, and it had landed by a step. */
  private boolean made(List<PlannedShift> shifts, Direction direction, int pair, int step) {
    return shifts.stream()
        .filter(s -> s.direction() == direction && s.pair() == pair)
        .map(this::landing)
        .anyMatch(landing -> landing.isPresent() && landing.getAsInt() <= step);
  }

  /** The step on which a shift landed, or was planned to; empty where nothing landed. */
  OptionalInt landing(PlannedShift shift) {
    ReviewedShift known = said.get(shift);
    if (known == null) {
      return OptionalInt.of(shift.landingStep());
    }
    return known.verdict() == ShiftVerdict.MISSED
        ? OptionalInt.empty()
        : OptionalInt.of(landings.step(known));
  }

  /** Index into the chain of the shape that the hand was in. */
  int stand(int step) {
    return stands[step];
  }

  /** The fret of the first finger. */
  int hand(int step) {
    Step planned = drill.route().steps().get(step);
    return drill.chain().get(stands[step]).hand(place(step).orElse(planned.place()).string());
  }

  /** Where a step's pitch lies under the hand; empty where it is out of the hand's shape. */
  Optional<Place> place(int step) {
    int midi = drill.route().steps().get(step).midi();
    return drill.chain().get(stands[step]).notes().stream()
        .filter(note -> note.midi() == midi)
        .map(PlacedNote::place)
        .findFirst();
  }

  /** Whether every shift that was not made as planned in a step's round was made elsewhere. */
  boolean known(int step) {
    int ofRound = drill.route().stepsPerRound() - 1;
    int round = Math.min(drill.rounds() - 1, step / ofRound);
    return said.values().stream()
        .noneMatch(s -> s.planned().round() == round && s.verdict() == ShiftVerdict.MISSED);
  }
}
