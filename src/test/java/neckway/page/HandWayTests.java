package neckway.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import neckway.drill.Drills;
import neckway.drill.PlayableDrill;
import neckway.hand.ShiftVerdict;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.PlannedShift;
import neckway.neck.Step;
import neckway.review.ReviewedShift;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The worked drill is G major, major and Dorian from fret 3, up on string 3, down on string 5. */
class HandWayTests {
  private static ReviewedShift said(PlannedShift shift, ShiftVerdict verdict, Integer string) {
    return new ReviewedShift(
        shift,
        verdict,
        Optional.ofNullable(string).map(GuitarString::new),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty());
  }

  /** The way where some shifts of the first round went otherwise than planned. */
  private static HandWay way(PlayableDrill drill, ReviewedShift... said) {
    Map<PlannedShift, ReviewedShift> known = new HashMap<>();
    List.of(said).forEach(s -> known.put(s.planned(), s));
    return new HandWay(drill, known);
  }

  private static PlannedShift shift(PlayableDrill drill, Direction direction, int pair) {
    return drill.route().shifts().stream()
        .filter(s -> s.round() == 0 && s.direction() == direction && s.pair() == pair)
        .findFirst()
        .orElseThrow();
  }

  private static List<String> elsewhere(PlayableDrill drill, HandWay way) {
    return drill.route().steps().stream()
        .filter(s -> way.place(s.index()).filter(p -> !p.equals(s.place())).isPresent())
        .map(s -> s.place() + " at " + way.place(s.index()).orElseThrow())
        .toList();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "major",
        "major,dorian",
        "minor,major,dorian",
        "major,dorian,phrygian,mixolydian,minor"
      })
  void whereNothingIsSaidItIsAsPlanned(String shapes) {
    for (int rounds = 1; rounds <= 2; rounds++) {
      PlayableDrill drill =
          Drills.of("A major", shapes, OptionalInt.empty(), List.of(), List.of(), rounds);
      HandWay way = way(drill);
      for (Step step : drill.route().steps()) {
        int s = step.index();
        assertThat(way.place(s)).contains(step.place());
        assertThat(way.hand(s)).isEqualTo(drill.hand(s));
        assertThat(way.stand(s)).isEqualTo(step.stand());
      }
    }
  }

  /**
   * By hand: A3, fret 2 of string 3 (open G3), is fret 7 of string 4 (open D3). There the fourth
   * finger slides from fret 5 to 7, which is step 6 (common practice, no source).
   */
  @Test
  void aShiftMadeEarlierPutsTheNotesBetweenOnTheLowerString() {
    PlayableDrill drill = Drills.example();
    HandWay way = way(drill, said(shift(drill, Direction.UP, 0), ShiftVerdict.MOVED, 4));
    assertThat(elsewhere(drill, way)).containsExactly("3:2 at 4:7");
    assertThat(way.landing(shift(drill, Direction.UP, 0))).hasValue(6);
    assertThat(way.known(6)).isTrue();
    assertThat(way.hand(6)).isEqualTo(4);
  }

  @Test
  void aShiftMadeLaterPutsThemOnTheHigherString() {
    PlayableDrill drill = Drills.example();
    HandWay way = way(drill, said(shift(drill, Direction.UP, 0), ShiftVerdict.MOVED, 2));
    // D on string 3, fret 7, is fret 3 of string 2
    assertThat(elsewhere(drill, way)).containsExactly("3:7 at 2:3");
  }

  @Test
  void aHandThatStaysBelowPlaysAllItCanInItsShape() {
    PlayableDrill drill = Drills.example();
    HandWay way =
        way(
            drill,
            said(shift(drill, Direction.UP, 0), ShiftVerdict.MISSED, null),
            said(shift(drill, Direction.DOWN, 0), ShiftVerdict.MISSED, null));
    assertThat(IntStream.range(0, 25).map(way::stand).distinct()).containsExactly(0);
    assertThat(way.landing(shift(drill, Direction.UP, 0))).isEmpty();
    assertThat(elsewhere(drill, way))
        .containsExactly(
            "3:7 at 2:3", "2:8 at 1:3", "2:8 at 1:3", "3:7 at 2:3", "4:7 at 3:2", "5:7 at 4:2");
    // C5 is above the major shape
    assertThat(way.place(12)).isEmpty();
    assertThat(way.known(8)).isFalse();
  }

  @Test
  void aHandThatStaysAboveNeverComesBack() {
    PlayableDrill drill = Drills.example();
    HandWay way = way(drill, said(shift(drill, Direction.DOWN, 0), ShiftVerdict.MISSED, null));
    assertThat(way.stand(24)).isEqualTo(1);
    assertThat(way.place(24)).isEmpty();
  }

  /** What the sound does not tell is taken as planned: nothing speaks against it. */
  @Test
  void aShiftUnheardOrNotReachedIsWherePlanned() {
    PlayableDrill drill = Drills.example();
    for (ShiftVerdict verdict : List.of(ShiftVerdict.UNHEARD, ShiftVerdict.UNPLAYED)) {
      HandWay way = way(drill, said(shift(drill, Direction.UP, 0), verdict, null));
      assertThat(elsewhere(drill, way)).isEmpty();
    }
  }

  /** Whoever never reached the second shape was never in the third. */
  @Test
  void theShiftAfterOneThatWasMissedIsNotMadeEither() {
    PlayableDrill drill =
        Drills.of("G major", "major,dorian,phrygian", OptionalInt.of(3), List.of(), List.of(), 1);
    HandWay way = way(drill, said(shift(drill, Direction.UP, 0), ShiftVerdict.MISSED, null));
    assertThat(IntStream.range(0, 27).map(way::stand).distinct()).containsExactly(0);
  }
}
