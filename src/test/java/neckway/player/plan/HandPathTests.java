package neckway.player.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.stream.Collectors;
import neckway.neck.BadInput;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.player.TestRoutes;
import neckway.player.plan.Mistake.ShiftElsewhere;
import neckway.words.Tongue;
import neckway.words.Wording;
import org.junit.jupiter.api.Test;

class HandPathTests {
  private static HandPath path(int rounds, ShiftElsewhere... elsewhere) {
    return new HandPath(TestRoutes.majorIntoDorian(rounds), List.of(elsewhere), new Random(1));
  }

  private static String places(HandPath path) {
    return path.stops().stream().map(s -> s.place().toString()).collect(Collectors.joining(" "));
  }

  private static ShiftElsewhere shift(int round, Direction direction, Integer string) {
    return new ShiftElsewhere(
        round, direction, OptionalInt.empty(), Optional.ofNullable(string).map(GuitarString::new));
  }

  @Test
  void movedUpToTheHighestStringPlaysTheWholeLowerShapeFirst() {
    // Worked out by hand on the neck.
    assertThat(places(path(1, shift(0, Direction.UP, 1))))
        .isEqualTo(
            "6:3 6:5 5:2 5:5 4:2 4:5 3:2 3:4 2:3 2:5 1:3 1:5 1:7 "
                + "1:5 2:8 2:5 3:7 3:4 4:7 4:5 5:7 5:5 5:2 6:5 6:3");
  }

  @Test
  void movedDownToTheThirdString() {
    assertThat(places(path(1, shift(0, Direction.DOWN, 3))))
        .endsWith("1:7 1:5 2:8 2:5 3:7 3:4 3:2 4:5 4:2 5:5 5:2 6:5 6:3");
  }

  @Test
  void handThatStaysTurnsOnItsOwnTopNoteAndMissesTheWayDownToo() {
    HandPath path = path(1, shift(0, Direction.UP, null));
    String up = "6:3 6:5 5:2 5:5 4:2 4:5 3:2 3:4 2:3 2:5 1:3 1:5 ";
    String down = "1:3 2:5 2:3 3:4 3:2 4:5 4:2 5:5 5:2 6:5 6:3";
    assertThat(places(path)).isIn(up + down, up + "1:5 " + down);
    assertThat(path.stops())
        .extracting(s -> s.step().index())
        .doesNotContain(12)
        .contains(0, 11, 14, 24);
    for (var planned : TestRoutes.majorIntoDorian(1).shifts()) {
      assertThat(path.handAt(planned)).isEmpty();
    }
  }

  @Test
  void handThatDoesNotComeDownCannotReachTheLowestNoteButBeginsTheNextRoundThere() {
    HandPath path = path(2, shift(0, Direction.DOWN, null));
    assertThat(places(path)).contains("5:7 5:5 6:7 6:5 6:3 6:5 5:2");
    assertThat(path.stops()).hasSize(49);
    assertThat(path(1, shift(0, Direction.DOWN, null)).stops()).hasSize(24);
  }

  @Test
  void shiftThatTheRouteDoesNotHaveIsBadInput() {
    assertThatThrownBy(() -> path(1, shift(1, Direction.UP, 3)))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("no shift up in round 1");
    assertThatThrownBy(() -> path(1, shift(0, Direction.UP, 7)))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("string 7");
  }

  @Test
  void aComplaintIsGermanWhereGermanIsSpoken() {
    assertThatThrownBy(() -> Wording.in(Tongue.GERMAN, () -> path(1, shift(1, Direction.UP, 3))))
        .isInstanceOf(BadInput.class)
        .hasMessage("Die Übung hat in Runde 1 keinen Lagenwechsel aufwärts; lass ihn weg");
    assertThatThrownBy(() -> Wording.in(Tongue.GERMAN, () -> path(1, shift(0, Direction.UP, 7))))
        .isInstanceOf(BadInput.class)
        .hasMessage("Saite 7: Diese Saite hat die Übung nicht");
  }
}
