package neckway.neck;

import java.util.List;

/**
 * The list of steps of a whole take, with the shifts in the order met.
 *
 * @param shapes the chain, low to high, one to five
 * @param steps all steps of all rounds; the bottom note between two rounds is there once
 * @param shifts 2 (shapes - 1) a round
 * @param rounds at least 1
 */
public record Route(List<Shape> shapes, List<Step> steps, List<PlannedShift> shifts, int rounds) {
  public Route {
    shapes = List.copyOf(shapes);
    steps = List.copyOf(steps);
    shifts = List.copyOf(shifts);
  }

  /** Steps of one round, its bottom note at both ends counted. */
  public int stepsPerRound() {
    return (steps.size() - 1) / rounds + 1;
  }

  /**
   * On how many strings each shape is played on one way, two notes on each; where the hand shifts,
   * both shapes have their two notes.
   *
   * @return low to high, at least 1 for each shape
   */
  public List<Integer> stringsPlayed(Direction direction) {
    List<GuitarString> met =
        shifts.stream()
            .filter(shift -> shift.round() == 0 && shift.direction() == direction)
            .map(PlannedShift::string)
            .toList();
    int strings = steps.get(0).place().string().number();
    return JoinPlan.stringsPlayed(strings, JoinPlan.inOrderMet(met, direction));
  }
}
