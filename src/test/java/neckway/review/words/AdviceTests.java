package neckway.review.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import neckway.drill.PlayableDrill;
import neckway.hand.ShiftVerdict;
import neckway.neck.PlannedShift;
import neckway.review.Clock;
import neckway.review.Grid;
import neckway.words.Tongue;
import neckway.words.Wording;
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

  private static String said(MadeUp take) {
    return String.join(" ", take.review().summary().words());
  }

  private static String german(MadeUp take) {
    List<String> words = Wording.in(Tongue.GERMAN, () -> Words.of(take.drill(), take.review()));
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
    assertThat(advice(once().wrong(5, 2)))
        .isEqualTo(
            "First: start a few notes before fret 5 on the fourth string and play up to it"
                + " slowly.");
    assertThat(advice(once().wrong(14, 2))).contains("play down to it slowly");
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
    MadeUp take = thrice().wrong(3, 2).wrong(14, 2).wrong(14 + 2 * ROUND, 2);
    String again =
        "First: start a few notes before fret 8 on the second string and play down to it slowly,"
            + " until it is right three times running.";
    assertThat(advice(take)).isEqualTo(again);
    assertThat(advice(thrice().leftOut(14, 14 + ROUND))).isEqualTo(again);
    assertThat(advice(thrice().wrong(14, 2).leftOut(14 + ROUND))).isEqualTo(again);
  }

  @Test
  void equalsAreSettledByWhatCameFirst() {
    assertThat(advice(once().wrong(14, 2).wrong(3, 2))).contains("fret 5 on the fifth string");
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
    assertThat(advice(once().wrong(3, 2).waits(UP, 60))).contains("fret 5 on the fifth string");
  }

  @Test
  void theSameLandingLateAgainIsLeftForSooner() {
    assertThat(advice(thrice().off(UP, 120).off(ROUND + UP, 100).off(2 * ROUND + UP, 140)))
        .isEqualTo(
            "First: play the shift up on the third string alone, two notes before it and the"
                + " landing, and let the hand leave as soon as the last of them sounds.");
  }

  /** What the pitch shows of a wrong note decides how it is worked on. */
  @Test
  void aFretOffAtTheEndOfAStretchIsReachedFor() {
    String english =
        "First: hold fret 2 on the fourth string with the first finger, and set the fourth finger"
            + " down on fret 5 without a sound until it lands there; then play both.";
    assertThat(advice(once().wrong(5, -1))).isEqualTo(english);
    assertThat(advice(once().wrong(5, 1))).isEqualTo(english);
    assertThat(advice(thrice().wrong(5, -1).wrong(5 + ROUND, -1))).isEqualTo(english);
    assertThat(german(once().wrong(5, -1)))
        .isEqualTo(
            "Zuerst: Halt Bund 2 auf der vierten Saite mit dem ersten Finger und setz den vierten"
                + " Finger ohne Anschlag in Bund 5, bis er dort landet; dann spiel beide.");
    assertThat(advice(once().wrong(4, 1)))
        .contains("hold fret 5 on the fourth string with the fourth finger");
    assertThat(advice(once().wrong(5, -2))).doesNotContain("hold");
  }

  @Test
  void theStretchMissedInSeveralPlacesIsOneThingToWorkOn() {
    MadeUp take = once().wrong(3, -1).wrong(5, -1).wrong(10, -1);
    assertThat(advice(take))
        .isEqualTo(
            "First: the stretch from first to fourth finger missed in three places; in each, hold"
                + " one finger down and set the other down without a sound until it lands on its"
                + " fret.");
    assertThat(german(take)).startsWith("Zuerst: Die Spreizung vom ersten zum vierten Finger ging");
    assertThat(advice(take.shift(0, ShiftVerdict.UNHEARD))).contains("stretch");
  }

  @Test
  void aLandingBesideItsFretIsSlidTo() {
    assertThat(advice(once().wrong(UP, -1)))
        .isEqualTo(
            "First: the shift up on the third string landed short; slide the first finger to"
                + " fret 4 and stop there, until it lands by itself.");
    assertThat(german(once().wrong(UP, -1)))
        .startsWith("Zuerst: Der Lagenwechsel aufwärts auf der dritten Saite landete zu kurz;");
    assertThat(advice(once().wrong(UP, 2))).contains("third string landed too far; slide");
    assertThat(advice(once().wrong(DOWN, 1)))
        .contains("fifth string landed short; slide the fourth");
    assertThat(advice(once().wrong(DOWN, -1))).contains("fifth string landed too far");
    assertThat(advice(once().wrong(UP, -1).wrong(UP + 1, -1))).contains("landed short");
    assertThat(advice(once().wrong(UP, 3))).doesNotContain("landed");
    assertThat(advice(once().wrong(UP, -1).moved(0, 4))).doesNotContain("landed");
  }

  /** Where the hand was elsewhere than planned, its fingers were too. */
  @Test
  void ofAHandThatWasElsewhereNoReachIsNamed() {
    MadeUp moved = once().moved(0, 4).moved(1, 4);
    for (int s : new int[] {5, 14, 16}) {
      moved.wrong(s, -1);
    }
    MadeUp planned = once();
    for (int s : new int[] {5, 14, 16}) {
      planned.wrong(s, -1);
    }
    assertThat(advice(planned)).contains("the stretch from first to fourth finger");
    assertThat(advice(moved)).doesNotContain("stretch").doesNotContain("hold");
  }

  /** From the third to the second string of the Dorian shape the hand moves by a fret. */
  @Test
  void aHandThatStayedInsideAShapeIsTakenAlong() {
    PlayableDrill dorian = Phrasebook.drill("dorian", 1, 80);
    String up =
        "First: let the hand move up a fret on the way to fret 5 on the second string; play fret 7"
            + " on the third string and then this note, to and fro, until the hand goes along.";
    assertThat(advice(new MadeUp(dorian).wrong(8, -1))).isEqualTo(up);
    assertThat(advice(new MadeUp(dorian).wrong(8, -1).wrong(9, -1))).isEqualTo(up);
    assertThat(german(new MadeUp(dorian).wrong(8, -1)))
        .startsWith("Zuerst: Lass die Hand auf dem Weg zu Bund 5 auf der zweiten Saite einen Bund");
    assertThat(advice(new MadeUp(dorian).wrong(15, 1).wrong(16, 1)))
        .contains("let the hand move down a fret on the way to fret 7 on the third string");
    assertThat(advice(new MadeUp(dorian).wrong(8, 1)))
        .doesNotContain("let the hand move")
        .as("the hand moves there too")
        .doesNotContain("hold fret");
    assertThat(advice(new MadeUp(dorian).wrong(8, -1).wrong(9, 1)))
        .contains("play the notes from fret 5 on the second string to fret 8 on the second string");
  }

  @Test
  void anOpenStringAndAStringBesideAreTold() {
    MadeUp open = once().wrong(16, -7);
    assertThat(said(open))
        .contains(
            "fret 7 on the third string, coming down, sounded like G3, most likely the open third"
                + " string.");
    assertThat(advice(open))
        .isEqualTo("First: set the finger down for fret 7 on the third string before the stroke.");
    assertThat(german(open)).startsWith("Zuerst: Setz den Finger für Bund 7 auf der dritten Saite");
    MadeUp beside = once().wrong(4, 5);
    assertThat(advice(beside))
        .isEqualTo(
            "First: start a few notes before fret 2 on the fourth string, slowly, and watch which"
                + " string finger and pick go to: A3 is the same fret of the third string.");
    assertThat(german(beside)).contains("A3 ist der gleiche Bund auf der dritten Saite");
  }

  @Test
  void notesSpoiltInARowAreOneThingToWorkOn() {
    MadeUp take = once().wrong(3, 2).wrong(14, 2).leftOut(15).wrong(16, 1);
    assertThat(advice(take))
        .isEqualTo(
            "First: play the notes from fret 8 on the second string to fret 7 on the third string"
                + " alone, slowly, until they are right three times running.");
    assertThat(german(take))
        .endsWith("Bund 8 auf der zweiten Saite bis Bund 7 auf der dritten Saite.");
  }

  /** The four causes of one landing place lead to four different things to do. */
  @Test
  void reachLateShiftNoiseAndRushingAreWorkedOnDifferently() {
    List<MadeUp> causes =
        List.of(once().wrong(5, -1), once().off(UP, 120), once().besides(UP - 1, 55), after(-60));
    assertThat(causes.stream().map(AdviceTests::advice).distinct()).hasSize(causes.size());
    assertThat(causes.stream().map(AdviceTests::german).distinct()).hasSize(causes.size());
  }

  @Test
  void rushingAfterTheShiftsUpAloneIsSaidOfThese() {
    MadeUp take = thrice();
    for (int round = 0; round < 3; round++) {
      for (int s = UP + 1; s <= UP + 4; s++) {
        take.off(round * ROUND + s, -60);
      }
    }
    assertThat(said(take)).containsPattern("After the shifts up you rushed, by some [56]\\d ms\\.");
    assertThat(advice(take)).contains("let each note wait for its place");
    assertThat(german(take)).contains("lass jede Note auf ihren Platz warten");
  }

  /** What came early after the shifts is told as that, and is no unevenness of the rest. */
  @Test
  void rushingAfterTheShiftIsNotUnevenTime() {
    MadeUp take = once();
    for (int landing : new int[] {UP, DOWN}) {
      for (int s = landing + 1; s <= Math.min(landing + 4, ROUND); s++) {
        take.off(s, -60);
      }
    }
    assertThat(said(take))
        .contains("After the shifts you rushed")
        .contains("The other notes were even")
        .contains("First: count aloud through the shift");
  }

  /** Time that strays at random is not taken for a habit after the shift. */
  @Test
  void unevenTimeIsNotRushingAfterTheShift() {
    int said = 0;
    for (long seed = 0; seed < 400; seed++) {
      Random random = new Random(seed);
      double strayMs = 15 + 45 * random.nextDouble();
      MadeUp take = seed % 2 == 0 ? once() : thrice();
      for (int s = 1; s < take.drill().route().steps().size(); s++) {
        take.off(s, strayMs * random.nextGaussian());
      }
      said += said(take).contains("After the shift") ? 1 : 0;
    }
    assertThat(said).isZero();
  }

  @Test
  void aRunThatWasTooFastGoesBackToTheTempoOfTheDrill() {
    MadeUp take = once().paced(1.5).uneven(s -> 60 * Math.sin(2.4 * s * s));
    assertThat(advice(take)).contains("play at 80 beats a minute until the notes fall evenly");
  }

  @Test
  void whoCameInLateCountsIn() {
    assertThat(advice(once().waits(0, 750)))
        .isEqualTo(
            "First: count a bar aloud before you begin, so that the first note comes when it is"
                + " due.");
    assertThat(german(once().waits(0, 750))).startsWith("Zuerst: Zähl einen Takt laut vor");
    assertThat(advice(once().waits(0, 3000))).startsWith("Next: ");
  }

  @Test
  void struckTwiceAloneGetsAdvice() {
    assertThat(advice(once().twice(5)))
        .isEqualTo(
            "First: play slowly through fret 5 on the fourth string, with one stroke for each"
                + " note.");
    assertThat(advice(once().twice(5).twice(16))).contains("play the run slowly, with one stroke");
    assertThat(advice(thrice().twice(5).twice(5 + ROUND))).contains("slowly through fret 5 on the");
  }

  @Test
  void openStringsAreLaidFingersOn() {
    assertThat(advice(once().besides(5, 55)))
        .isEqualTo(
            "First: lay the unused fingers on the strings, so that the open third string stays"
                + " silent.");
    assertThat(advice(once().besides(5, 55).besides(9, 50))).contains("open strings stay silent");
    assertThat(advice(once().besides(5, 58))).contains("lift each finger only when the next");
    assertThat(advice(once().besides(UP - 1, 55)))
        .isEqualTo(
            "First: leave the finger lightly on the third string while the hand shifts, so that"
                + " it stays silent.");
    assertThat(german(once().besides(UP - 1, 55))).contains("leicht auf der dritten Saite liegen");
    assertThat(advice(once().besides(16, 55)))
        .isEqualTo(
            "First: lift the finger straight up from the third string, without pulling at it, so"
                + " that it stays silent.");
    assertThat(german(once().besides(16, 55))).contains("ohne an ihr zu zupfen");
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
        .isEqualTo("First: play it at 68 beats a minute, or slower, so that no note has to wait.");
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
    assertThat(advice(after(-60)))
        .isEqualTo("First: count aloud through the shift and let each note wait for its place.");
    assertThat(said(after(-60))).containsPattern("After the shifts you rushed, by some [56]\\d ms");
    assertThat(advice(after(60))).contains("stop on the landing and think of the next two notes");
    assertThat(said(after(60))).contains("After the shifts you dragged");
    assertThat(said(after(15))).doesNotContain("After the shift").contains("Next: ");
  }

  @Test
  void aDriftIsNoRushingAfterTheShift() {
    assertThat(said(once().uneven(step -> 6 * step))).doesNotContain("After the shift");
  }

  @Test
  void anUnevenRunIsSlowedDown() {
    assertThat(advice(once().uneven(s -> 90 * Math.sin(2.4 * s * s))))
        .contains("play at 68 beats a minute until the notes fall evenly");
  }

  @Test
  void aLeanIsWorkedOnOnlyWhereThereIsABeat() {
    assertThat(advice(once().leans(30))).contains("let each note start with your foot");
    assertThat(advice(once().leans(-30))).contains("play no note before your foot is down");
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
