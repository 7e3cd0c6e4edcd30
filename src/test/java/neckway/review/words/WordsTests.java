package neckway.review.words;

import static org.assertj.core.api.Assertions.assertThat;

import neckway.hand.ShiftVerdict;
import neckway.review.Clock;
import org.junit.jupiter.api.Test;

/** Sentences other than the advice, on reviews made by hand. */
class WordsTests {
  private static final int ROUND = 24;
  private static final int TOP = 12;
  private static final int UP = 7;

  private static String words(MadeUp take) {
    return String.join(" ", take.review().summary().words());
  }

  private static MadeUp take(int rounds) {
    return new MadeUp(Phrasebook.drill("major,dorian", rounds, 80));
  }

  private static MadeUp stays(MadeUp take, int round) {
    return take.shift(2 * round, ShiftVerdict.MISSED)
        .shift(2 * round + 1, ShiftVerdict.MISSED)
        .leftOut(round * ROUND + TOP);
  }

  @Test
  void everyRoundWithoutAShiftIsNamedInOneSentence() {
    assertThat(words(stays(stays(take(3), 0), 2)))
        .contains(
            "In rounds 1 and 3 the hand stayed in the major shape and never reached the Dorian"
                + " one, so there was no shift down either.")
        .doesNotContain("left out");
    assertThat(words(stays(take(3), 1))).contains("In round 2 the hand stayed in the major");
    assertThat(words(stays(take(1), 0))).contains("The hand stayed in the major shape");
  }

  @Test
  void aShiftDownThatWasMissedIsSaidAndExplainsTheBottomNote() {
    MadeUp take = take(3).shift(3, ShiftVerdict.MISSED).leftOut(2 * ROUND);
    assertThat(words(take))
        .contains(
            "Coming down in round 2 the hand stayed in the Dorian shape and never came back to the"
                + " major one.")
        .doesNotContain("left out");
  }

  @Test
  void theBottomNoteThatTheUpperShapeLacksIsNoStoppingEarly() {
    MadeUp take = take(1).shift(1, ShiftVerdict.MISSED).stopsAfter(ROUND - 1);
    assertThat(words(take)).contains("Coming down the hand stayed").doesNotContain("You stopped");
    assertThat(words(take(1).stopsAfter(ROUND - 1))).contains("You stopped before the end");
  }

  @Test
  void ofAChainOnlyTheFirstMissedShiftIsSaid() {
    MadeUp take = new MadeUp(Phrasebook.drill("major,dorian,phrygian", 1, 80));
    for (int shift = 0; shift < 4; shift++) {
      take.shift(shift, ShiftVerdict.MISSED);
    }
    int top = (take.drill().route().steps().size() - 1) / 2;
    assertThat(words(take.leftOut(top - 1, top, top + 1)))
        .containsOnlyOnce("hand stayed in")
        .contains("The hand stayed in the major shape and never reached the Dorian one")
        .doesNotContain("left out");
  }

  @Test
  void eachTryIsTold() {
    assertThat(words(take(1).tryBefore(9).wrong(14, 1)))
        .contains("You began twice; the rest is about the second try.")
        .contains(
            "The first try stopped at fret 5 on the second string, going up; the second went"
                + " through, with one wrong note.");
    assertThat(words(take(1).tryBefore(4).tryBefore(9)))
        .contains("You began three times; the rest is about the last try.")
        .contains("The second try stopped at fret 5 on the second string, going up.")
        .contains("The third try went through.");
    assertThat(words(take(1))).doesNotContain("try");
  }

  @Test
  void shiftsMovedAlikeAreOneSentence() {
    assertThat(words(take(3).moved(0, 4).moved(4, 4)))
        .containsOnlyOnce("You shifted")
        .contains(
            "You shifted up on the fourth string in rounds 1 and 3, not on the third string as"
                + " planned.");
  }

  @Test
  void aFigureIsSaidOfALandingOnlyWhereItsPlaceSaysTheSame() {
    assertThat(words(take(1).waits(UP, 120)))
        .contains("The shift up on the third string landed 1")
        .contains("The other notes were even: four in five within");
    assertThat(words(take(1).off(UP - 1, -85).off(UP, 37)))
        .contains(
            "The note before the shift up on the third string came early, so the landing seemed"
                + " late.")
        .doesNotContain("landed");
    assertThat(words(take(1).leans(-110).off(UP, 100))).doesNotContain("landed");
  }

  @Test
  void whoIsTheBeatIsNeitherAheadOfItNorBehind() {
    MadeUp free = take(1).uneven(step -> step == 0 ? 0 : 30).firstNoteIsTheBeat();
    assertThat(words(free)).doesNotContain("the beat").doesNotContain("the click");
    assertThat(words(free.clock(Clock.UNMEASURED))).doesNotContain("the click");
    assertThat(words(take(1).uneven(step -> step == 0 ? 0 : 30))).contains("behind the beat");
  }

  @Test
  void aNoteOfNoStepIsSaidOnceHoweverOftenItSounded() {
    assertThat(words(take(1).besides(3, 55).besides(9, 55)))
        .contains(
            "Two notes that do not belong there: G3 twice, most likely the open third string.");
  }

  @Test
  void aNoteHeardAndNotNamedIsOwned() {
    assertThat(words(take(1).unclear(5)))
        .contains("One note I heard but could not make out: fret 5 on the fourth string, going up.")
        .doesNotContain("left out");
  }

  @Test
  void upToAStopTheShareIsOfWhatWasPlayed() {
    assertThat(words(take(1).stopsAfter(9).wrong(3, 1)))
        .startsWith("Up to where you stopped, 9 of 10 notes were right.");
  }

  @Test
  void theSameSlipOfSeveralRoundsIsNamedOnce() {
    assertThat(words(take(3).wrong(14, 1).wrong(14 + 2 * ROUND, 1)))
        .contains(
            "Two notes wrong: fret 8 on the second string, coming down in rounds 1 and 3, sounded"
                + " like fret 9.");
    assertThat(words(take(3).wrong(14, 1).wrong(14 + ROUND, 2)))
        .contains("coming down in round 1, sounded like fret 9; fret 8")
        .contains("coming down in round 2, sounded like fret 10.");
    assertThat(words(take(3).leftOut(14, 14 + ROUND, 14 + 2 * ROUND)))
        .contains("Three notes left out: fret 8 on the second string, coming down in every round.");
    assertThat(words(take(3).twice(5).twice(5 + ROUND)))
        .contains("Two notes struck twice: fret 5 on the fourth string, going up in rounds 1 and");
    assertThat(words(take(3).waits(15, 300).waits(15 + ROUND, 300)))
        .containsPattern(
            "You hesitated before fret 5 on the second string, coming down in rounds 1 and 2, for"
                + " some (29|30|31)0 ms\\.");
  }

  @Test
  void roundsWithoutASlipAreNamedBesideOthers() {
    assertThat(words(take(4).wrong(2 * ROUND + 5, 1).leftOut(3 * ROUND + 12)))
        .contains("Rounds 1 and 2 had no slip.");
    assertThat(words(take(3).twice(5).besides(ROUND + 5, 55))).contains("Round 3 had no slip.");
    assertThat(words(take(6).wrong(5, 1))).contains("Five of six rounds had no slip.");
    assertThat(words(take(3))).doesNotContain("had no slip");
    assertThat(words(take(1).wrong(5, 1))).doesNotContain("had no slip");
    assertThat(words(take(2).moved(0, 4).unclear(ROUND + 5))).doesNotContain("had no slip");
    assertThat(words(take(2).stopsAfter(ROUND + 5))).contains("Round 1 had no slip.");
  }

  @Test
  void allRightIsSaidEvenWhereMoreSounded() {
    assertThat(words(take(1).twice(5)))
        .startsWith("All 25 notes were right. Both")
        .contains("One note struck twice");
    assertThat(words(take(1).stopsAfter(9).twice(5)))
        .startsWith("Up to where you stopped, all 10 notes were right. You");
  }

  /** The word comes before its figure, and it is that of the figure. */
  @Test
  void evennessIsSaidByAWordAndThenAFigure() {
    assertThat(words(take(1)))
        .containsPattern("Your time was even: four notes in five within \\d ");
    assertThat(words(take(1).uneven(s -> 30 * Math.sin(2.4 * s * s))))
        .containsPattern("Your time was fairly even: four notes in five within [23]\\d ms");
    assertThat(words(take(1).uneven(s -> 90 * Math.sin(2.4 * s * s))))
        .containsPattern("Your time was uneven: four notes in five lay up to \\d+ ms");
    assertThat(words(take(1).waits(15, 400))).contains("The other notes were ");
  }

  @Test
  void aSingleNoteOfNoStepHasItsPlace() {
    assertThat(words(take(3).besides(ROUND + 5, 55)))
        .contains(
            "One note that does not belong there: G3, most likely the open third string, after"
                + " fret 5 on the fourth string, going up in round 2.");
    assertThat(words(take(1).besides(24, 55)))
        .contains("does not belong there: G3, most likely the open third string.");
  }
}
