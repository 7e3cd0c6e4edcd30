package neckway.practice;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import neckway.neck.Shape;
import org.junit.jupiter.api.Test;

/** The rule of what is open, case by case; its figures are common practice, no source. */
final class ProgressTests {
  private static final LocalDate FIRST = LocalDate.of(2026, 5, 1);
  private static final Exercise MINOR = new Exercise.OfShape(Shape.MINOR);

  private final List<PlayedRound> rounds = new ArrayList<>();

  /** Rounds on a day: a c is clean, an x is not. */
  private ProgressTests on(int day, double tempo, String played) {
    LocalDate date = FIRST.plusDays(day);
    for (char round : played.toCharArray()) {
      rounds.add(
          new PlayedRound(
              MINOR,
              date.atStartOfDay().toInstant(ZoneOffset.UTC).plusSeconds(rounds.size()),
              date,
              round == 'c',
              tempo,
              OptionalDouble.empty()));
    }
    return this;
  }

  private State stateOn(int day) {
    return new Progress(MINOR, rounds, 100, FIRST.plusDays(day)).state();
  }

  @Test
  void neverPlayedIsNew() {
    assertThat(stateOn(0)).isEqualTo(State.NEW);
    on(5, 80, "cc");
    assertThat(stateOn(4)).as("later rounds are not known yet").isEqualTo(State.NEW);
  }

  @Test
  void fiveOfSixCleanAtTempoOverTwoDaysIsOpen() {
    on(0, 75, "ccc");
    assertThat(stateOn(0)).isEqualTo(State.WORKING);
    on(1, 75, "xcc");
    assertThat(stateOn(1)).isEqualTo(State.OPEN);
  }

  @Test
  void oneDayIsNotEnough() {
    on(0, 90, "cccccccc");
    assertThat(stateOn(0)).isEqualTo(State.WORKING);
  }

  @Test
  void slowRoundsChangeNothing() {
    on(0, 74.9, "cccc").on(1, 74.9, "cccc");
    assertThat(stateOn(1)).isEqualTo(State.WORKING);
    on(2, 80, "ccc").on(3, 80, "cc");
    assertThat(stateOn(3)).isEqualTo(State.OPEN);
    on(4, 60, "xxxxx");
    assertThat(stateOn(4)).isEqualTo(State.OPEN);
  }

  @Test
  void twoUncleanAtTempoFadeAndItOpensAgain() {
    on(0, 80, "ccc").on(1, 80, "ccc").on(2, 80, "x");
    assertThat(stateOn(2)).isEqualTo(State.OPEN);
    on(2, 80, "x");
    assertThat(stateOn(2)).isEqualTo(State.FADING);
    on(3, 80, "cccc");
    assertThat(stateOn(3)).isEqualTo(State.FADING);
    on(4, 80, "c");
    assertThat(stateOn(4)).isEqualTo(State.OPEN);
  }

  @Test
  void unplayedForTooLongFades() {
    on(0, 80, "ccc").on(1, 80, "ccc");
    assertThat(stateOn(8)).as("seven days").isEqualTo(State.OPEN);
    assertThat(stateOn(9)).as("eight days").isEqualTo(State.FADING);
    on(11, 80, "c");
    assertThat(stateOn(11)).as("five of six clean again").isEqualTo(State.OPEN);
    assertThat(stateOn(31)).as("twice the ten days that it went unplayed").isEqualTo(State.OPEN);
    assertThat(stateOn(32)).isEqualTo(State.FADING);
  }

  @Test
  void figures() {
    on(0, 80, "cx").on(2, 90, "c").on(3, 95, "x");
    Progress progress = new Progress(MINOR, rounds, 100, FIRST.plusDays(9));
    assertThat(progress.rounds()).isEqualTo(4);
    assertThat(progress.cleanRounds()).isEqualTo(2);
    assertThat(progress.bestCleanTempo()).hasValue(90);
    assertThat(progress.lastDay()).hasValue(FIRST.plusDays(3));
  }
}
