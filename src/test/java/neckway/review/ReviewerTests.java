package neckway.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import neckway.drill.Drills;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.follow.Following;
import neckway.follow.NotePlayer;
import neckway.follow.NoteVerdict;
import neckway.follow.Verdict;
import neckway.hand.PlaceGuess;
import neckway.hand.ShiftDetector;
import neckway.hand.ShiftVerdict;
import neckway.review.words.Words;
import org.junit.jupiter.api.Test;

/** Steps, shifts, summary and words of the worked route, played by hand. */
class ReviewerTests {
  private static final double GAP = 0.375;
  private static final Pulse PULSE = new Pulse(80, 2, 4, 4);
  private static final PlayableDrill DRILL = Drills.example();

  private final NotePlayer player = new NotePlayer(DRILL.route(), GAP, 2, 0, new Random(1));

  private Review review(OptionalDouble tuningCents, Clock clock) {
    List<NoteVerdict> verdicts =
        Following.of(DRILL.route(), PULSE, OptionalDouble.of(2), player.heard());
    TakeFigures take = new TakeFigures(20, 48_000, -6, -70, tuningCents);
    ShiftDetector hand = new ShiftDetector(DRILL, Optional.empty(), (attempt, said) -> {});
    verdicts.forEach(hand::decided);
    hand.finish(20);
    Review review =
        new Reviewer(DRILL, GuitarKnown.NOT_LEARNT, hand, clock)
            .review(verdicts, List.of(), note -> true, OptionalDouble.of(2), List.of(), take);
    return review.withWords(Words.of(DRILL, review));
  }

  private Review review() {
    return review(OptionalDouble.empty(), Clock.MEASURED);
  }

  private String words() {
    return String.join(" ", review().summary().words());
  }

  @Test
  void aCleanRun() {
    player.rights(0, 24, 0);
    Review review = review();
    assertThat(review.summary().right()).isEqualTo(25);
    assertThat(review.steps()).allMatch(s -> s.verdict() == StepVerdict.PLAYED);
    assertThat(review.shifts()).hasSize(2).allMatch(s -> s.verdict() == ShiftVerdict.UNHEARD);
    assertThat(review.shifts().get(0).p()).isEmpty();
    assertThat(review.shifts().get(0).lateMs().getAsDouble()).isEqualTo(0, within(8.0));
    assertThat(words())
        .startsWith("All 25 notes were right and in order.")
        .doesNotContain("First:")
        .doesNotContain("cents");
  }

  @Test
  void everyPlaceOfANoteIsListedTheHandsOwnFirst() {
    player.right(0, 0).right(1, 0).right(2, 0).right(3, 0);
    List<PlaceGuess> places = review().notes().get(3).places();
    assertThat(places).extracting(g -> g.place().toString()).contains("5:5", "6:10", "4:0");
    assertThat(places).hasSize(3);
    assertThat(places.stream().max(Comparator.comparingDouble(PlaceGuess::p)).orElseThrow().place())
        .isEqualTo(DRILL.route().steps().get(3).place());
    assertThat(places.stream().mapToDouble(PlaceGuess::p).sum()).isEqualTo(1, within(1e-12));
  }

  @Test
  void aWrongNoteIsSaidByWayStringAndFret() {
    player.rights(0, 13, 0).wrong(14, 68, 0).rights(15, 24, 0);
    Review review = review();
    assertThat(review.steps().get(14).verdict()).isEqualTo(StepVerdict.WRONG);
    assertThat(review.summary().wrong()).isEqualTo(1);
    assertThat(review.summary().skipped()).isZero();
    assertThat(words())
        .contains("24 of 25 notes were right.")
        .contains("One note wrong: fret 8 on the second string, coming down, sounded like fret 9.")
        .contains("First: hold fret 5 on the second string with the first finger");
  }

  @Test
  void turningEarlyIsAMissedShiftAndNotTwoNotesLeftOut() {
    player.rights(0, 11, 0).skip(12, false).skip(13, false).rights(14, 24, 0);
    Review review = review();
    assertThat(review.shifts()).allMatch(s -> s.verdict() == ShiftVerdict.MISSED);
    assertThat(review.shifts()).allMatch(s -> s.p().isPresent() && s.lateMs().isEmpty());
    assertThat(review.steps().get(12).verdict()).isEqualTo(StepVerdict.SKIPPED);
    assertThat(review.summary().skipped()).isEqualTo(2);
    assertThat(words())
        .contains("The hand stayed in the major shape and never reached the Dorian one")
        .contains("stop on the landing, fret 4 with the first finger")
        .doesNotContain("left out");
  }

  @Test
  void stoppingEarlyLeavesStepsUnplayedAndIsNoMistake() {
    player.rights(0, 9, 0);
    Review review = review();
    assertThat(review.steps().get(9).verdict()).isEqualTo(StepVerdict.PLAYED);
    assertThat(review.steps().get(10).verdict()).isEqualTo(StepVerdict.UNPLAYED);
    assertThat(review.summary().skipped()).isZero();
    assertThat(review.shifts().get(0).verdict()).isEqualTo(ShiftVerdict.UNHEARD);
    assertThat(review.shifts().get(1).verdict()).isEqualTo(ShiftVerdict.UNPLAYED);
    assertThat(words())
        .contains(
            "You stopped before the end: the last 15 notes, from fret 8 on the second string");
  }

  @Test
  void theAttemptThatGotFurthestIsReviewed() {
    player.rights(0, 6, 0).pause(3).rights(0, 20, 1).pause(3).rights(0, 3, 2);
    Review review = review();
    assertThat(review.attempts()).isEqualTo(3);
    assertThat(review.reviewed()).isEqualTo(1);
    assertThat(review.summary().notes()).isEqualTo(21);
    assertThat(words())
        .contains("You began three times; the rest is about the second try, which got furthest.");
  }

  @Test
  void ofTwoTriesThatGotEquallyFarTheOneWithFewerSlipsStands() {
    player.rights(0, 24, 0).pause(3).rights(0, 8, 1).rights(10, 24, 1);
    assertThat(review().attempts()).isEqualTo(2);
    assertThat(review().reviewed()).isZero();
    assertThat(review().summary().skipped()).isZero();
    assertThat(words())
        .contains("You began twice; the rest is about the first try, the better one.");
  }

  @Test
  void ofTwoTriesThatAreAlikeTheLaterOneStands() {
    player.rights(0, 24, 0).pause(3).rights(0, 24, 1);
    assertThat(review().reviewed()).isEqualTo(1);
  }

  @Test
  void aLateLandingIsNotWrappedAndStandsApartFromTheRest() {
    player.rights(0, 6, 0).pause(1.0).rights(7, 24, 0);
    Review review = review();
    assertThat(review.shifts().get(0).lateMs().getAsDouble()).isEqualTo(1000, within(10.0));
    assertThat(words())
        .contains("The shift up on the third string landed a second late")
        .doesNotContain("On the whole")
        .contains("First: play the shift up on the third string alone");
  }

  @Test
  void biasIsSaidFromWhatCanBeNoticedAndOnlyWhereTheDelayIsKnown() {
    player.pause(0.02).rights(0, 24, 0);
    assertThat(words()).contains("On the whole you were 20 ms behind the beat.");
    List<String> unmeasured = review(OptionalDouble.empty(), Clock.UNMEASURED).summary().words();
    assertThat(String.join(" ", unmeasured))
        .doesNotContain("behind the beat")
        .contains("has not been measured");
  }

  @Test
  void aSmallBiasIsNotSaid() {
    player.pause(0.007).rights(0, 24, 0);
    assertThat(words()).doesNotContain("On the whole");
  }

  @Test
  void aGuitarOffTuneIsSaid() {
    player.rights(0, 24, 0);
    Review review = review(OptionalDouble.of(-30.4), Clock.MEASURED);
    assertThat(String.join(" ", review.summary().words()))
        .contains("The guitar is 30 cents flat as a whole");
    assertThat(review.notes().get(0).cents()).isEqualTo(30.4, within(1e-9));
  }

  @Test
  void silenceIsSaid() {
    Review review = review();
    assertThat(review.notes()).isEmpty();
    assertThat(review.steps()).allMatch(s -> s.verdict() == StepVerdict.UNPLAYED);
    assertThat(words()).startsWith("I heard no notes in this take.");
  }

  @Test
  void anotherRouteDoesNotFit() {
    for (int s = 0; s < 25; s++) {
      player.wrong(s, DRILL.route().steps().get(s).midi() + 1, 0);
    }
    assertThat(words()).startsWith("What I heard does not fit this drill: of 25 notes, no");
  }

  /**
   * Notes none of which follows another tell no usual time between notes: nothing is late by it.
   */
  @Test
  void nothingIsLateWhereNoTwoNotesFollowEachOther() {
    for (int s = 1; s < 25; s += 2) {
      player.right(s, 0).skip(s + 1, true);
    }
    Review review = review();
    assertThat(review.shifts())
        .allSatisfy(shift -> assertThat(shift.lateMs()).isNotEqualTo(OptionalDouble.of(Double.NaN)))
        .anyMatch(shift -> shift.verdict() == ShiftVerdict.UNHEARD && shift.lateMs().isEmpty());
  }

  @Test
  void countsAreThoseOfTheNotes() {
    player.playWithSlips(
        List.of(
            new NotePlayer.Slip("wrong", 3),
            new NotePlayer.Slip("extra", 8),
            new NotePlayer.Slip("repeat", 15),
            new NotePlayer.Slip("skipped", 20)),
        0,
        0);
    Review review = review();
    List<Integer> counts = new ArrayList<>();
    for (Verdict verdict : Verdict.values()) {
      counts.add((int) review.notes().stream().filter(n -> n.verdict() == verdict).count());
    }
    Summary summary = review.summary();
    assertThat(counts)
        .containsExactly(summary.right(), summary.wrong(), summary.repeat(), summary.extra())
        .containsExactly(23, 1, 1, 1);
    assertThat(summary.skipped()).isEqualTo(1);
    assertThat(words())
        .contains("One note struck twice:")
        .contains("One note that does not belong there:");
  }
}
