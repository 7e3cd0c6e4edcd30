package neckway.player.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import neckway.neck.BadInput;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.Place;
import neckway.neck.PlannedShift;
import neckway.neck.Route;
import neckway.neck.Step;
import neckway.words.Wording;

/**
 * Where the hand goes: the route's steps as places, with shifts made elsewhere or not at all.
 *
 * <p>A shape is consecutive notes of the scale, two a string, and the next one up starts on its
 * second note; so note i of the scale, counted from the route's lowest, lies on string (i - s) / 2
 * of stand s, strings counted from the lowest.
 */
final class HandPath {
  /** One step where the hand plays it; {@code landing} if the hand has just moved there. */
  record Stop(Step step, Place place, Optional<PlannedShift> landing) {}

  private static final double RESTRIKE_SHARE = 0.2;
  private static final int HIGHEST_FRET = 27;

  private final Route route;
  private final List<GuitarString> strings;
  private final Map<GuitarString, Integer> open = new HashMap<>();
  private final int topNote;
  private final List<Stop> stops = new ArrayList<>();
  private final Map<PlannedShift, Optional<GuitarString>> hands = new HashMap<>();

  HandPath(Route route, List<Mistake.ShiftElsewhere> elsewhere, Random random) {
    this.route = route;
    for (Step step : route.steps()) {
      open.putIfAbsent(step.place().string(), step.midi() - step.place().fret());
    }
    strings = open.keySet().stream().sorted(Comparator.reverseOrder()).toList();
    topNote = 2 * strings.size() - 2 + route.shapes().size();
    for (PlannedShift shift : route.shifts()) {
      hands.put(shift, Optional.of(shift.string()));
    }
    if (elsewhere.isEmpty()) {
      asPlanned();
    } else {
      if (route.steps().size() != 2 * topNote * route.rounds() + 1) {
        throw new IllegalArgumentException("not a route up and down its shapes: " + route);
      }
      elsewhere.forEach(this::take);
      for (int round = 0; round < route.rounds(); round++) {
        walk(round, random);
      }
      hands.forEach(this::checkReached);
    }
  }

  /** The steps in the order played. */
  List<Stop> stops() {
    return stops;
  }

  /** Where the hand moves at a shift; empty if it stays. */
  Optional<GuitarString> handAt(PlannedShift shift) {
    return hands.get(shift);
  }

  /** The step on which the hand lands after a shift, or was to land. */
  int landingStep(PlannedShift shift) {
    return stops.stream()
        .filter(s -> s.landing().equals(Optional.of(shift)))
        .mapToInt(s -> s.step().index())
        .findFirst()
        .orElse(shift.landingStep());
  }

  /** The open string's MIDI note number. */
  int open(GuitarString string) {
    return open.get(string);
  }

  /** Strings from the lowest to the highest. */
  List<GuitarString> strings() {
    return strings;
  }

  private void asPlanned() {
    for (Step step : route.steps()) {
      stops.add(
          new Stop(
              step,
              step.place(),
              route.shifts().stream().filter(s -> s.landingStep() == step.index()).findFirst()));
    }
  }

  private void take(Mistake.ShiftElsewhere mistake) {
    PlannedShift shift =
        route.shifts().stream()
            .filter(s -> s.round() == mistake.round() && s.direction() == mistake.direction())
            .filter(s -> mistake.pair().isEmpty() || mistake.pair().getAsInt() == s.pair())
            .filter(s -> hands.get(s).equals(Optional.of(s.string())))
            .findFirst()
            .orElseThrow(
                () ->
                    new BadInput(
                        Wording.of(
                            way("music.player.noShift", mistake.direction()), mistake.round())));
    mistake
        .string()
        .filter(s -> !strings.contains(s))
        .ifPresent(
            s -> {
              throw new BadInput(Wording.of("music.player.noString", s));
            });
    hands.put(shift, mistake.string());
  }

  private void checkReached(PlannedShift shift, Optional<GuitarString> hand) {
    if (hand.isPresent() && stops.stream().noneMatch(s -> s.landing().equals(Optional.of(shift)))) {
      throw new BadInput(
          Wording.of(way("music.player.inTheWay", shift.direction()), shift.round(), hand.get()));
    }
  }

  /** The key of a sentence for a way. */
  private static String way(String key, Direction direction) {
    return key + (direction == Direction.UP ? ".up" : ".down");
  }

  private PlannedShift shift(int round, Direction direction, int pair) {
    return route.shifts().stream()
        .filter(s -> s.round() == round && s.direction() == direction && s.pair() == pair)
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no shift for pair " + pair));
  }

  private void walk(int round, Random random) {
    int first = round * 2 * topNote;
    int pairs = route.shapes().size() - 1;
    int stand = 0;
    int bottom = 2 * strings.size() - 1;
    for (int note = 0; note <= topNote; note++) {
      Optional<PlannedShift> landing = Optional.empty();
      while (stand < pairs) {
        PlannedShift up = shift(round, Direction.UP, stand);
        if (hands.get(up).isEmpty() || note < landingNote(up, first, stand)) {
          break;
        }
        stand++;
        landing = Optional.of(up);
      }
      if (note > bottom + stand) {
        break;
      }
      if (round == 0 || note > 0) {
        stop(first + note, note, stand, landing);
      }
    }
    int reached = stand;
    for (int pair = reached; pair < pairs; pair++) {
      hands.put(shift(round, Direction.UP, pair), Optional.empty());
      hands.put(shift(round, Direction.DOWN, pair), Optional.empty());
    }
    int top = bottom + reached;
    boolean again = top < topNote && random.nextDouble() < RESTRIKE_SHARE;
    for (int note = again ? top : top - 1; note >= 0; note--) {
      Optional<PlannedShift> landing = Optional.empty();
      while (stand > 0) {
        PlannedShift down = shift(round, Direction.DOWN, stand - 1);
        if (hands.get(down).isEmpty() || note > landingNote(down, first, stand - 1)) {
          break;
        }
        stand--;
        landing = Optional.of(down);
      }
      if (note < stand) {
        break;
      }
      stop(first + 2 * topNote - note, note, stand, landing);
    }
    for (int pair = stand - 1; pair >= 0; pair--) {
      hands.put(shift(round, Direction.DOWN, pair), Optional.empty());
    }
    if (stand > 0 && round < route.rounds() - 1) {
      stop(first + 2 * topNote, 0, 0, Optional.empty());
    }
  }

  /**
   * Note of the scale on which the hand lands: as planned, or on another string the first one that
   * lies elsewhere if the hand does not move.
   *
   * @param first index of the round's first step
   * @param lower stand of the lower shape
   */
  private int landingNote(PlannedShift shift, int first, int lower) {
    GuitarString hand = hands.get(shift).orElseThrow();
    if (hand.equals(shift.string())) {
      int step = shift.landingStep() - first;
      return step <= topNote ? step : 2 * topNote - step;
    }
    return 2 * strings.indexOf(hand) + lower + (shift.direction() == Direction.UP ? 2 : 0);
  }

  private void stop(int index, int note, int stand, Optional<PlannedShift> landing) {
    Step step = route.steps().get(index);
    GuitarString string = strings.get((note - stand) / 2);
    int fret = step.midi() - open.get(string);
    if (fret < 0 || fret > HIGHEST_FRET) {
      throw new BadInput(Wording.of("music.player.outOfReach", index, string));
    }
    stops.add(new Stop(step, new Place(string, fret), landing));
  }
}
