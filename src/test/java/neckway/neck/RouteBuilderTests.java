package neckway.neck;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class RouteBuilderTests {
  private static final List<JoinChoice> CLEANEST = List.of();

  private static Route route(
      String key, String shapes, int start, List<JoinChoice> up, List<JoinChoice> down, int times) {
    return RouteBuilder.build(
        neck(key), neck(key).chain(shapes(shapes), OptionalInt.of(start)), up, down, times);
  }

  private static Neck neck(String key) {
    return new Neck(Key.parse(key), Tuning.STANDARD, 22);
  }

  private static List<Shape> shapes(String names) {
    return Arrays.stream(names.split(",")).map(Shape::parse).toList();
  }

  private static String places(Route route) {
    return route.steps().stream().map(s -> s.place().toString()).collect(Collectors.joining(" "));
  }

  private static String stands(Route route) {
    return route.steps().stream().map(s -> "" + s.stand()).collect(Collectors.joining());
  }

  private static String fingers(Route route) {
    return route.steps().stream().map(s -> "" + s.finger()).collect(Collectors.joining());
  }

  @Test
  void theWorkedExampleOfTheDrillFormat() {
    Route route =
        route(
            "G major", "major,dorian", 3, List.of(JoinChoice.on(3)), List.of(JoinChoice.on(5)), 1);

    assertThat(places(route))
        .isEqualTo(
            "6:3 6:5 5:2 5:5 4:2 4:5 3:2 3:4 3:7 2:5 2:8 1:5 1:7"
                + " 1:5 2:8 2:5 3:7 3:4 4:7 4:5 5:7 5:5 5:2 6:5 6:3");
    // The first finger slides from 3:2 to 3:4, which is the landing note; coming down the fourth
    // slides from 5:7 to 5:5.
    assertThat(stands(route)).isEqualTo("0000000111111111111110000");
    assertThat(fingers(route)).isEqualTo("241414" + "1" + "141413" + "14141424" + "4142");
    assertThat(route.shifts())
        .containsExactly(
            new PlannedShift(0, Direction.UP, 0, new GuitarString(3), 1, 7),
            new PlannedShift(0, Direction.DOWN, 0, new GuitarString(5), 4, 21));
  }

  @Test
  void oneShapeIsPlayedUpAndDownWithItsTopNoteOnce() {
    assertThat(places(route("A major", "major", 5, CLEANEST, CLEANEST, 1)))
        .isEqualTo(
            "6:5 6:7 5:4 5:7 4:4 4:7 3:4 3:6 2:5 2:7 1:5 1:7"
                + " 1:5 2:7 2:5 3:6 3:4 4:7 4:4 5:7 5:4 6:7 6:5");
  }

  @Test
  void twoJoinsOnOneStringGiveFourNotesThere() {
    Route route =
        route(
            "A major",
            "major,dorian,phrygian",
            5,
            List.of(JoinChoice.on(4), JoinChoice.on(4)),
            List.of(JoinChoice.on(4), JoinChoice.on(4)),
            1);

    assertThat(places(route))
        .isEqualTo(
            "6:5 6:7 5:4 5:7 4:4 4:7 4:9 4:11 3:9 3:11 2:10 2:12 1:9 1:12"
                + " 1:9 2:12 2:10 3:11 3:9 4:11 4:9 4:7 4:4 5:7 5:4 6:7 6:5");
    assertThat(route.shifts()).hasSize(4);
    assertThat(route.shifts().stream().map(PlannedShift::pair)).containsExactly(0, 1, 1, 0);
  }

  @Test
  void betweenTwoRoundsTheBottomNoteSoundsOnce() {
    Route one = route("G major", "major,dorian", 3, CLEANEST, CLEANEST, 1);
    Route three = route("G major", "major,dorian", 3, CLEANEST, CLEANEST, 3);

    int n = one.steps().size();
    assertThat(three.steps()).hasSize(3 * (n - 1) + 1);
    assertThat(three.stepsPerRound()).isEqualTo(n);
    for (int round = 0; round < 3; round++) {
      for (int i = 0; i < n; i++) {
        Step step = three.steps().get(round * (n - 1) + i);
        assertThat(step.place()).isEqualTo(one.steps().get(i).place());
        assertThat(step.index()).isEqualTo(round * (n - 1) + i);
      }
    }
    assertThat(three.shifts()).hasSize(6);
    assertThat(three.shifts().get(4).landingStep())
        .isEqualTo(one.shifts().get(0).landingStep() + 2 * (n - 1));
  }

  @Test
  void leftOutTheJoinsAreTheCleanestUpAndTheSameStringDown() {
    Route route = route("A major", "major,dorian", 5, CLEANEST, CLEANEST, 1);

    assertThat(route.shifts().stream().map(s -> s.string().number())).containsExactly(3, 3);
    assertThat(route.shifts().stream().map(PlannedShift::finger)).containsExactly(1, 1);
  }

  /** Common practice, no published source: a diagonal across the neck, two strings a shape. */
  @Test
  void throughFiveShapesTheHandGoesUpOnEachInnerString() {
    Route route =
        route("A major", "major,dorian,phrygian,mixolydian,minor", 5, CLEANEST, CLEANEST, 1);

    assertThat(strings(route, Direction.UP)).containsExactly(5, 4, 3, 2);
    assertThat(strings(route, Direction.DOWN)).containsExactly(2, 3, 4, 5);
    assertThat(route.stringsPlayed(Direction.UP)).containsExactly(2, 2, 2, 2, 2);
    assertThat(route.stringsPlayed(Direction.DOWN)).containsExactly(2, 2, 2, 2, 2);
  }

  @Test
  void throughThreeShapesTheMiddleOneIsPlayedOnTwoStrings() {
    Route route = route("A major", "dorian,phrygian,mixolydian", 7, CLEANEST, CLEANEST, 1);

    assertThat(strings(route, Direction.UP)).containsExactly(5, 3);
    assertThat(route.stringsPlayed(Direction.UP)).containsExactly(2, 3, 3);
  }

  @Test
  void joinsAskedForOnOneStringLeaveTheMiddleShapeOneString() {
    List<JoinChoice> third = List.of(JoinChoice.on(3), JoinChoice.on(3));
    Route route = route("A major", "major,dorian,phrygian", 5, third, CLEANEST, 1);

    assertThat(strings(route, Direction.DOWN)).containsExactly(3, 3);
    assertThat(route.stringsPlayed(Direction.UP)).containsExactly(4, 1, 3);
  }

  private static List<Integer> strings(Route route, Direction direction) {
    return route.shifts().stream()
        .filter(shift -> shift.direction() == direction)
        .map(shift -> shift.string().number())
        .toList();
  }

  @Test
  void leftOutTheStartIsTheLowestPlaceWhereAllOfItFits() {
    Route route =
        RouteBuilder.build(
            neck("A major"),
            neck("A major").chain(shapes("mixolydian,minor"), OptionalInt.empty()),
            CLEANEST,
            CLEANEST,
            1);

    // From the open string the fourth string would need a fret below the nut.
    assertThat(route.steps().get(0).place()).hasToString("6:12");
  }

  @Test
  void aChangeOfFingersLandsOnTheTopNoteAndOnTheMiddleOneComingDown() {
    Route route =
        route(
            "A major",
            "major,dorian",
            5,
            List.of(JoinChoice.on(1, 3)),
            List.of(JoinChoice.on(1, 3)),
            1);

    assertThat(route.shifts())
        .containsExactly(
            new PlannedShift(0, Direction.UP, 0, new GuitarString(1), 3, 12),
            new PlannedShift(0, Direction.DOWN, 0, new GuitarString(1), 4, 13));
  }

  @Test
  void aStartThatIsNotItsNoteIsToldTheRightFrets() {
    assertThatThrownBy(() -> route("A major", "dorian", 4, CLEANEST, CLEANEST, 1))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("start 4")
        .hasMessageContaining("starts on B")
        .hasMessageContaining("fret 7 or 19");
  }

  @Test
  void shapesThatAreNotNeighboursAreToldWhatComesNext() {
    assertThatThrownBy(() -> route("A major", "major,phrygian", 5, CLEANEST, CLEANEST, 1))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("after major comes Dorian");
  }

  @Test
  void joinsThatDoNotExistAreToldWhichDo() {
    refused(List.of(JoinChoice.on(3, 2)), CLEANEST, "up: ", "finger 2", "take finger 1");
    refused(List.of(JoinChoice.on(7)), CLEANEST, "up: string 7", "1 to 6");
    refused(CLEANEST, List.of(JoinChoice.on(0)), "down: string 0", "1 to 6");
    refused(CLEANEST, List.of(JoinChoice.on(5, 1)), "down: ", "finger 1", "take finger 4");
  }

  @Test
  void tooManyJoinsAreRefused() {
    List<JoinChoice> two = List.of(JoinChoice.on(3), JoinChoice.on(2));
    refused(two, CLEANEST, "up: 2 joins", "1 pair");
    assertThatThrownBy(() -> route("A major", "major", 5, two, CLEANEST, 1))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("one shape alone has none");
  }

  @Test
  void joinsOutOfOrderAreRefused() {
    List<JoinChoice> rising = List.of(JoinChoice.on(3), JoinChoice.on(4));
    List<JoinChoice> falling = List.of(JoinChoice.on(4), JoinChoice.on(3));
    String three = "major,dorian,phrygian";
    assertThatThrownBy(() -> route("A major", three, 5, rising, CLEANEST, 1))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("up: string 4 after string 3");
    assertThatThrownBy(() -> route("A major", three, 5, CLEANEST, falling, 1))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("down: string 3 after string 4");
  }

  @Test
  void aRouteThatRunsOffTheNeckIsToldWhereItFits() {
    assertThatThrownBy(() -> route("A major", "major,dorian,phrygian", 17, CLEANEST, CLEANEST, 1))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("does not fit")
        .hasMessageContaining("start at 5");
  }

  @Test
  void roundsHaveBounds() {
    for (int rounds : new int[] {0, 100}) {
      assertThatThrownBy(() -> route("A major", "major", 5, CLEANEST, CLEANEST, rounds))
          .isInstanceOf(BadInput.class)
          .hasMessageContaining("rounds " + rounds);
    }
  }

  private static void refused(List<JoinChoice> up, List<JoinChoice> down, String... words) {
    assertThatThrownBy(() -> route("A major", "major,dorian", 5, up, down, 1))
        .isInstanceOf(BadInput.class)
        .hasMessageContainingAll(words);
  }
}
