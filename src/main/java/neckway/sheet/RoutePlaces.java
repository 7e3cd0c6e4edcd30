package neckway.sheet;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import neckway.drill.PlayableDrill;
import neckway.neck.Direction;
import neckway.neck.PlannedShift;
import neckway.neck.Step;
import neckway.words.Wording;

/** Where on a route the hand lands in another shape, and how. */
final class RoutePlaces {
  private final PlayableDrill drill;
  private final Map<Integer, PlannedShift> landings = new HashMap<>();

  RoutePlaces(PlayableDrill drill) {
    this.drill = drill;
    drill.route().shifts().forEach(shift -> landings.put(shift.landingStep(), shift));
  }

  /** The shift whose landing note a step is, if it is one. */
  Optional<PlannedShift> landing(int step) {
    return Optional.ofNullable(landings.get(step));
  }

  /** Whether the finger that plays a step slides on to the next one. */
  boolean slidesOn(int step) {
    int next = step + 1;
    if (!landings.containsKey(next)) {
      return false;
    }
    Step from = drill.route().steps().get(step);
    Step to = drill.route().steps().get(next);
    return from.place().string().equals(to.place().string()) && from.finger() == to.finger();
  }

  /** What stands over a landing note: the shape in which the hand lands. */
  String to(PlannedShift shift) {
    int stand = shift.direction() == Direction.UP ? shift.pair() + 1 : shift.pair();
    return Wording.of("music.sheet.to", drill.shapes().get(stand).spoken());
  }
}
