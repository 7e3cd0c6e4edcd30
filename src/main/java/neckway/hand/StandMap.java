package neckway.hand;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.Place;
import neckway.neck.PlannedShift;
import neckway.neck.Route;
import neckway.neck.Step;
import neckway.neck.Tuning;

/**
 * Where the steps of one round lie if the hand is in another stand than planned.
 *
 * <p>A shape is consecutive notes of the scale, two a string, and the next one up starts on its
 * second note; so note i of the scale, counted from the route's lowest, lies on string (i - s) / 2
 * of stand s, strings counted from the lowest. Stands are those of the route's chain, from 0, and
 * one more on either side.
 */
final class StandMap {
  /** The stand below the chain. */
  static final int LOWEST = -1;

  private final Route route;
  private final Tuning tuning;
  private final int frets;
  private final int half;

  /**
   * @param route up and down its shapes, one or more rounds
   * @param tuning of its strings
   * @param frets of the neck
   */
  StandMap(Route route, Tuning tuning, int frets) {
    this.route = route;
    this.tuning = tuning;
    this.frets = frets;
    this.half = 2 * tuning.count() - 2 + route.shapes().size();
    if (route.steps().size() != 2 * half * route.rounds() + 1) {
      throw new IllegalArgumentException("not a route up and down its shapes");
    }
  }

  /** Steps of a round, its bottom note at both ends counted. */
  int steps() {
    return 2 * half + 1;
  }

  /** Whether another round follows, which begins with this one's last note. */
  boolean anotherRoundAfter(int round) {
    return round < route.rounds() - 1;
  }

  /** Index of the top note within a round. */
  int top() {
    return half;
  }

  /**
   * Step of a round on which a hand that turns round in a stand below the chain's highest may
   * strike the top note of that stand again; empty for the other stands.
   */
  OptionalInt turnsOn(int stand) {
    boolean below = stand >= 0 && stand < route.shapes().size() - 1;
    return below ? OptionalInt.of(half + route.shapes().size() - 1 - stand) : OptionalInt.empty();
  }

  /** Number of stands, from {@link #LOWEST} up. */
  int stands() {
    return route.shapes().size() + 2;
  }

  /** Index into the route's steps of a step of a round. */
  int index(int round, int step) {
    return round * 2 * half + step;
  }

  /** Note of the scale of a step of a round, from 0, the route's lowest. */
  int note(int step) {
    return step <= half ? step : 2 * half - step;
  }

  /** Where a step of a round lies in a stand, if it can be played there. */
  Optional<Place> place(int step, int stand) {
    int up = note(step) - stand;
    List<GuitarString> strings = tuning.strings();
    if (up < 0 || up >= 2 * strings.size()) {
      return Optional.empty();
    }
    GuitarString string = strings.get(up / 2);
    Step planned = route.steps().get(step);
    int fret = planned.midi() - tuning.openMidi(string);
    return fret < 0 || fret > frets ? Optional.empty() : Optional.of(new Place(string, fret));
  }

  /**
   * Step of a round on which a shift made on a string first shows: the first one that lies on
   * another string if the hand has not moved.
   *
   * @param pair index of the lower shape in the chain
   */
  int shows(Direction direction, int pair, GuitarString string) {
    int fromLowest = tuning.count() - string.number();
    return direction == Direction.UP
        ? 2 * fromLowest + 2 + pair
        : 2 * half - (2 * fromLowest + pair);
  }

  /** The shift planned in a round. */
  PlannedShift shift(int round, Direction direction, int pair) {
    return route.shifts().stream()
        .filter(s -> s.round() == round && s.direction() == direction && s.pair() == pair)
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no shift for pair " + pair));
  }

  /** Pairs of neighbours in the chain. */
  int pairs() {
    return route.shapes().size() - 1;
  }

  List<GuitarString> strings() {
    return tuning.strings();
  }
}
