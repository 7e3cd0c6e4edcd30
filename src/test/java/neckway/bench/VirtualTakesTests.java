package neckway.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import neckway.drill.Drills;
import neckway.drill.PlayableDrill;
import neckway.neck.JoinChoice;
import neckway.neck.Route;
import neckway.neck.Tuning;
import neckway.player.settings.PlayerSettings;
import neckway.player.settings.PlayerSettings.Condition;
import org.junit.jupiter.api.Test;

class VirtualTakesTests {
  /** Two joins on the first string, the lower one from its middle note and the upper one to it. */
  @Test
  void twoJoinsThatLandOnOneNoteAreBothPlayed() {
    PlayableDrill drill =
        Drills.of(
            "G major",
            "major,dorian,phrygian",
            OptionalInt.of(3),
            List.of(JoinChoice.on(1, 3), JoinChoice.on(1, 1)),
            List.of(),
            1);
    Route route = drill.route();
    assertThat(route.shifts().get(0).landingStep()).isEqualTo(route.shifts().get(1).landingStep());
    PlayedTake take = VirtualTakes.play(1, "two joins", PlayerSettings.plain(), drill);
    assertThat(take.take().notes()).hasSameSizeAs(route.steps());
  }

  @Test
  void theSameSeedGivesTheSameTake() {
    PlayedTake once = VirtualTakes.take(7, Condition.DIRTY);
    PlayedTake again = VirtualTakes.take(7, Condition.DIRTY);
    assertThat(again.take().samples()).isEqualTo(once.take().samples());
    assertThat(again.take().notes()).isEqualTo(once.take().notes());
  }

  @Test
  void drillsStayWithinTheFretsAskedFor() {
    for (long seed = 0; seed < 50; seed++) {
      PlayableDrill drill =
          new RandomDrills(new Random(seed)).on(Tuning.STANDARD, 2, 1, 15, 0.2, 0.4);
      assertThat(drill.route().steps())
          .allSatisfy(s -> assertThat(s.place().fret()).isBetween(1, 15));
      assertThat(drill.pulse().slotSeconds()).isBetween(0.19, 0.42);
    }
  }

  @Test
  void ordinaryDrillsComeAtAnOrdinaryPace() {
    for (long seed = 0; seed < 50; seed++) {
      PlayableDrill drill = new RandomDrills(new Random(seed)).ordinary();
      assertThat(drill.pulse().slotSeconds()).isBetween(0.25, 0.47);
      assertThat(drill.route().shapes().size()).isBetween(1, 3);
      assertThat(drill.route().steps())
          .allSatisfy(s -> assertThat(s.place().fret()).isBetween(1, 17));
    }
  }

  @Test
  void drillsOnLowTuningsGoBelowTheSixStringsLowE() {
    for (long seed = 0; seed < 20; seed++) {
      PlayableDrill drill = new RandomDrills(new Random(seed)).low();
      assertThat(drill.route().steps()).anySatisfy(s -> assertThat(s.midi()).isLessThan(40));
    }
  }
}
