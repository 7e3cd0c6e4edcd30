package neckway.review.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import neckway.drill.PlayableDrill;
import neckway.hand.ShiftVerdict;
import neckway.neck.PlannedShift;
import neckway.review.Clock;
import neckway.review.Grid;
import org.junit.jupiter.api.Test;

/** What is worked on first, cause by cause, on reviews made by hand. */
class AdviceTests {
  private static final PlayableDrill ONCE = Phrasebook.drill("major,dorian", 1, 80);
  private static final PlayableDrill THRICE = Phrasebook.drill("major,dorian", 3, 80);
  private static final int ROUND = 24;
  private static final int UP = 7;
  private static final int DOWN = 21;

  private static String advice(MadeUp take) {
    List<String> words = take.review().summary().words();
    return words.get(words.size() - 1);
  }

  private static MadeUp once() {
    return new MadeUp(ONCE);
  }

  private static MadeUp thrice() {
    return new MadeUp(THRICE);
  }

  @Test
  void landingsAreWhereTheseTestsTakeThem() {
    assertThat(ONCE.route().shifts())
        .extracting(PlannedShift::landingStep)
        .containsExactly(UP, DOWN);
  }

  @Test
  void aWrongNoteIsComeUponSlowlyFromTheSideItIsPlayedFrom() {
    assertThat(advice(once().wrong(5, 1)))
        .isEqualTo(
            "First: start a few notes before fret 5 on the fourth string and play up to it"
                + " slowly.");
    assertThat(advice(once().wrong(14, 1))).contains("play down to it slowly");
    assertThat(advice(thrice().wrong(ROUND, 2))).contains("play down to it slowly");
  }

  @Test
  void noNoteIsAskedForBeforeTheFirst() {
    assertThat(advice(once().wrong(0, 2)))
        .contains("put the finger down for the first note, fret 3 on the sixth string");
    assertThat(advice(once().wrong(1, 2))).contains("start one note before fret 5");
    assertThat(advice(once().wrong(2, 2))).contains("start two notes before fret 2");
  }

  @Test
  void aNoteLeftOutIsStoppedOn() {
    assertThat(advice(once().leftOut(5))).contains("play up to it and stop on it");
  }

  @Test
  void theSameNoteInSeveralRoundsComesBeforeAnEarlierSingleOne() {
    MadeUp take = thrice().wrong(3, 1).wrong(14, 1).wrong(14 + 2 * ROUND, 1);
    assertThat(advice(take))
        .isEqualTo(
            "First: fret 8 on the second string, coming down, was wrong in rounds 1 and 3; start"
                + " a few notes before it and play down to it slowly.");
    assertThat(advice(thrice().leftOut(14, 14 + ROUND))).contains("was left out in rounds 1 and 2");
    assertThat(advice(thrice().wrong(14, 1).leftOut(14 + ROUND))).contains("wrong or left out");
  }

  @Test
  void equalsAreSettledByWhatCameFirst() {
    assertThat(advice(once().wrong(14, 1).wrong(3, 1))).contains("fret 5 on the fifth string");
  }

  @Test
  void aMissedShiftComesBeforeTwoWrongNotes() {
    MadeUp take =
        once()
            .wrong(2, 1)
            .wrong(3, 1)
            .shift(0, ShiftVerdict.MISSED)
            .shift(1, ShiftVerdict.MISSED)
            .leftOut(12);
    assertThat(advice(take))
        .startsWith("First: play up to the third string and stop on the landing, fret 4");
  }

  @Test
  void aMissedShiftDownIsWorkedOnComingDown() {
    assertThat(advice(thrice().shift(1, ShiftVerdict.MISSED).leftOut(ROUND)))
        .startsWith("First: play down to the fifth string and stop on the landing, fret 5");
  }

  @Test
  void aShiftElsewhereComesBeforeASingleWrongNote() {
    assertThat(advice(once().wrong(3, 1).moved(0, 4)))
        .startsWith("First: play the shift up on the third string alone, its three notes");
  }

  @Test
  void aLandingFarLateComesBeforeAWrongNoteAndALittleLateAfterIt() {
    assertThat(advice(once().wrong(3, 1).waits(UP, 300)))
        .isEqualTo(
            "First: play the shift up on the third string alone, two notes before it and the"
                + " landing, slowly enough to land in time.");
    assertThat(advice(once().wrong(3, 1).waits(UP, 60))).contains("fret 5 on the fifth string");
  }

  @Test
  void theSameLandingLateAgainIsSaidByItsMiddle() {
    assertThat(advice(thrice().off(UP, 120).off(ROUND + UP, 100).off(2 * ROUND + UP, 140)))
        .matches(
            "First: the shift up on the third string landed some 1[12]0 ms late in every round;"
                + " play it alone, .*");
  }

  @Test
  void struckTwiceAloneGetsAdvice() {
    assertThat(advice(once().twice(5)))
        .isEqualTo(
            "First: play slowly through fret 5 on the fourth string, with one stroke for each"
                + " note.");
    assertThat(advice(once().twice(5).twice(16))).contains("play the run slowly, with one stroke");
  }

  @Test
  void openStringsAreLaidFingersOn() {
    assertThat(advice(once().besides(5, 55)))
        .isEqualTo(
            "First: lay the unused fingers on the strings, so that the open third string stays"
                + " silent.");
    assertThat(advice(once().besides(5, 55).besides(9, 50))).contains("open strings stay silent");
    assertThat(advice(once().besides(5, 58))).contains("lift each finger only when the next");
  }

  @Test
  void whatIsPlayedAfterTheRunIsNotWorkedOn() {
    assertThat(advice(once().besides(24, 55))).startsWith("Next:");
  }

  @Test
  void aHesitationAloneGetsAdviceAndManyAreTheTempo() {
    assertThat(advice(once().waits(5, 1500)))
        .startsWith("First: start a few notes before fret 5 on the fourth string and play on");
    assertThat(advice(once().waits(3, 400).waits(5, 400).waits(16, 400)))
        .isEqualTo("First: play it more slowly, at a tempo that needs no waiting.");
  }

  private static MadeUp after(double ms) {
    MadeUp take = thrice();
    for (int landing : new int[] {UP, DOWN, ROUND + UP, ROUND + DOWN}) {
      for (int s = landing + 1; s <= landing + 4; s++) {
        take.off(s, ms);
      }
    }
    return take;
  }

  @Test
  void rushingAndDraggingAfterTheShift() {
    assertThat(advice(after(-60))).containsPattern("after the shift you rush, by some [56]\\d ms");
    assertThat(advice(after(60))).contains("after the shift you drag");
    assertThat(advice(after(15))).doesNotContain("after the shift");
  }

  @Test
  void aDriftIsNoRushingAfterTheShift() {
    assertThat(advice(once().uneven(step -> 6 * step))).doesNotContain("after the shift");
  }

  @Test
  void anUnevenRunIsSlowedDown() {
    assertThat(advice(once().uneven(s -> 90 * Math.sin(2.4 * s * s))))
        .contains("the notes fall unevenly; play at 68 beats a minute");
  }

  @Test
  void aLeanIsWorkedOnOnlyWhereThereIsABeat() {
    assertThat(advice(once().leans(30))).contains("you play behind the beat");
    assertThat(advice(once().leans(-30))).contains("you play ahead of the beat");
    assertThat(advice(once().leans(30).beatFrom(Grid.Source.NOTES))).startsWith("Next:");
    assertThat(advice(once().leans(30).clock(Clock.UNMEASURED))).startsWith("Next:");
  }

  @Test
  void whoStoppedGoesOnFromThere() {
    assertThat(advice(once().stopsAfter(9)))
        .isEqualTo(
            "First: start a few notes before fret 8 on the second string, going up, and play on"
                + " from there to the end.");
    assertThat(advice(once().stopsAfter(9).twice(5))).contains("one stroke for each note");
  }

  @Test
  void aCleanRunGetsAStepThatFitsTheDrill() {
    assertThat(advice(new MadeUp(Phrasebook.drill("major", 1, 80))))
        .isEqualTo("Next: join the major shape to its neighbour above, the Dorian shape.");
    assertThat(advice(once())).isEqualTo("Next: the same a little faster, at 85 beats a minute.");
    assertThat(advice(thrice())).contains("shift up on the fourth string instead");
    assertThat(advice(new MadeUp(Phrasebook.drill("major,dorian", 1, 120))))
        .contains("shift up on the fourth string instead");
    assertThat(advice(new MadeUp(Phrasebook.drill("major,dorian", 3, 120))))
        .contains("join the Dorian shape to its neighbour above, the Phrygian shape");
  }

  @Test
  void tempoIsRaisedBySmallSteps() {
    assertThat(advice(new MadeUp(Phrasebook.drill("major,dorian", 1, 40)))).contains("at 44 beats");
    assertThat(advice(new MadeUp(Phrasebook.drill("major,dorian", 1, 96))))
        .contains("at 102 beats");
  }
}
