package neckway.hand;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.OptionalInt;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.JoinChoice;
import neckway.neck.Key;
import neckway.neck.Neck;
import neckway.neck.Place;
import neckway.neck.PlannedShift;
import neckway.neck.Route;
import neckway.neck.RouteBuilder;
import neckway.neck.Shape;
import neckway.neck.Step;
import neckway.neck.Tuning;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StandMapTests {
  private static Route route(Tuning tuning, int shapes, int rounds, int up, int down) {
    Neck neck = new Neck(Key.parse("G major"), tuning, 22);
    List<Shape> chain = List.of(Shape.MAJOR, Shape.DORIAN, Shape.PHRYGIAN).subList(0, shapes);
    return RouteBuilder.build(
        neck,
        neck.chain(chain, OptionalInt.empty()),
        chain.stream().skip(1).map(s -> JoinChoice.on(up)).toList(),
        chain.stream().skip(1).map(s -> JoinChoice.on(down)).toList(),
        rounds);
  }

  @ParameterizedTest
  @CsvSource({
    "E2 A2 D3 G3 B3 E4, 1, 1, 1, 1",
    "E2 A2 D3 G3 B3 E4, 2, 1, 3, 5",
    "E2 A2 D3 G3 B3 E4, 2, 2, 6, 6",
    "E2 A2 D3 G3 B3 E4, 3, 2, 1, 1",
    "E2 A2 D3 G3 B3 E4, 3, 1, 4, 2",
    "D2 A2 D3 G3 B3 E4, 2, 1, 6, 1",
    "B1 E2 A2 D3 G3 B3 E4, 2, 1, 7, 3",
    "D3 G3 B3 E4, 2, 1, 2, 4"
  })
  void eachStepLiesInItsStandWhereTheRouteHasIt(
      String tuning, int shapes, int rounds, int up, int down) {
    Route route = route(Tuning.parse(tuning), shapes, rounds, up, down);
    StandMap map = new StandMap(route, Tuning.parse(tuning), 22);
    for (int round = 0; round < rounds; round++) {
      for (int step = 0; step < map.steps(); step++) {
        Step there = route.steps().get(map.index(round, step));
        assertThat(map.place(step, there.stand())).contains(there.place());
      }
    }
  }

  @ParameterizedTest
  @CsvSource({"3, 5", "1, 6", "6, 1", "4, 2"})
  void aShiftFirstShowsWhereItsStringAndTheNextPart(int up, int down) {
    Route route = route(Tuning.STANDARD, 2, 1, up, down);
    StandMap map = new StandMap(route, Tuning.STANDARD, 22);
    for (PlannedShift shift : route.shifts()) {
      int shows = map.shows(shift.direction(), 0, shift.string());
      Step there = route.steps().get(shows);
      boolean goingUp = shift.direction() == Direction.UP;
      assertThat(there.stand()).isEqualTo(goingUp ? 1 : 0);
      assertThat(there.place().string()).isEqualTo(shift.string());
      assertThat(map.place(shows, goingUp ? 0 : 1).map(Place::string))
          .isNotEqualTo(java.util.Optional.of(shift.string()));
      assertThat(map.place(shows - 1, goingUp ? 0 : 1))
          .isEqualTo(java.util.Optional.of(route.steps().get(shows - 1).place()));
    }
  }

  @org.junit.jupiter.api.Test
  void theTopOfTheUpperShapeIsOutOfReachFromTheLower() {
    StandMap map = new StandMap(route(Tuning.STANDARD, 2, 1, 3, 5), Tuning.STANDARD, 22);
    assertThat(map.place(map.top(), 0)).isEmpty();
    assertThat(map.place(map.top(), 1)).isPresent();
    assertThat(map.place(0, 1)).isEmpty();
    assertThat(map.place(4, 1).map(Place::string)).contains(new GuitarString(5));
  }

  @org.junit.jupiter.api.Test
  void refusesARouteThatIsNotUpAndDown() {
    Route whole = route(Tuning.STANDARD, 2, 1, 3, 5);
    Route cut = new Route(whole.shapes(), whole.steps().subList(0, 9), List.of(), 1);
    assertThatThrownBy(() -> new StandMap(cut, Tuning.STANDARD, 22))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
