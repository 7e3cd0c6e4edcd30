package neckway.desk.read;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import neckway.drill.Drills;
import neckway.drill.PlayableDrill;
import neckway.neck.Direction;
import neckway.page.PagedTake;
import neckway.player.plan.Mistake;
import org.junit.jupiter.api.Test;

/** A shift from near has the places of the page. */
class CloseUpTests {
  private static CloseUp first(PagedTake take) {
    return CloseUp.of(
        ReadTake.played(take.drill(), take.review(), Optional.empty(), OptionalInt.empty()), 0);
  }

  private static List<String> labels(CloseUp near) {
    return near.notes().stream().map(CloseUp.Heard::label).toList();
  }

  /** By the truth of the test audio, step 6 is fret 9 of string 4 and not fret 4 of string 3. */
  @Test
  void aNotePlayedElsewhereIsNamedByItsPlace() {
    CloseUp near = first(PagedTake.recordedOnItsGuitar("moved-shift"));
    assertThat(labels(near)).contains("4:6", "4:9", "3:6").doesNotContain("3:4");
    assertThat(near.otherwise()).isTrue();
    assertThat(near.landed()).isPresent();
  }

  @Test
  void aHandThatStayedLandedNowhereAndOfUnknownPlacesNoneIsNamed() {
    CloseUp near = first(PagedTake.recorded("missed-shift"));
    assertThat(near.landed()).isEmpty();
    assertThat(near.made()).isEmpty();
    assertThat(near.otherwise()).isTrue();
    assertThat(labels(near)).containsSubsequence("3:12", "?", "2:13").doesNotContain("3:14");
  }

  /** In the major shape D4 is fret 3 of string 2. */
  @Test
  void whereTheGuitarIsKnownItIsNamedWhereItStayed() {
    PlayableDrill drill = Drills.example();
    Mistake stayed =
        new Mistake.ShiftElsewhere(0, Direction.UP, OptionalInt.of(0), Optional.empty());
    CloseUp near =
        first(
            PagedTake.of("stayed", drill, PagedTake.performance(drill, List.of(stayed), 3), true));
    assertThat(labels(near)).contains("2:3").doesNotContain("3:7");
  }
}
