package neckway.follow;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.Collectors;
import neckway.drill.Pulse;
import neckway.hear.HeardNote;
import neckway.neck.Route;
import org.junit.jupiter.api.Test;

/**
 * The worked route of the drill format, 6:3 6:5 5:2 ... 6:3, by hand. Pitches by the MIDI note
 * formula (A4 = 69, open strings 40 45 50 55 59 64): 43 45 47 50 52 55 ... up to 71 and back.
 */
class FollowerTests {
  private static final double GAP = 0.375;
  private static final double FIRST = 2;
  private static final double EAR = 0.03;
  private static final Pulse PULSE = new Pulse(80, 2, 4, 4);

  private final Route route = Routes.example();
  private final List<HeardNote> notes = new ArrayList<>();

  private void at(double slot, int midi) {
    double time = FIRST + slot * GAP;
    notes.add(
        new HeardNote(
            notes.size(), time, midi, midi, HeardNote.Start.PLUCK, true, -20, time + EAR));
  }

  private int midi(int step) {
    return route.steps().get(step).midi();
  }

  /** Plays steps, the first of them in a slot. */
  private void play(double slot, int from, int to) {
    for (int s = from; s <= to; s++) {
      at(slot + s - from, midi(s));
    }
  }

  private List<NoteVerdict> follow() {
    return Following.of(route, PULSE, OptionalDouble.of(FIRST), notes);
  }

  /** One letter and the step for each note: r right, w wrong, t twice, x extra; # a new attempt. */
  private static String said(List<NoteVerdict> verdicts) {
    return verdicts.stream()
        .map(
            v ->
                "rwtx".charAt(v.verdict().ordinal())
                    + (v.step().isPresent() ? "" + v.step().getAsInt() : "")
                    + "#".repeat(v.attempt()))
        .collect(Collectors.joining(" "));
  }

  @Test
  void theWholeRouteIsRightAndEachNoteAtOnce() {
    play(0, 0, 24);
    List<NoteVerdict> verdicts = follow();
    assertThat(verdicts).hasSize(25).allMatch(v -> v.verdict() == Verdict.RIGHT);
    assertThat(verdicts).extracting(v -> v.step().getAsInt()).isSorted();
    assertThat(verdicts).allSatisfy(v -> assertThat(v.decided()).isEqualTo(v.note().decided()));
  }

  @Test
  void aWrongNoteTakesItsStepAndIsDecidedWithinOneGap() {
    play(0, 0, 3);
    at(4, 53);
    play(5, 5, 8);
    List<NoteVerdict> verdicts = follow();
    assertThat(said(verdicts)).isEqualTo("r0 r1 r2 r3 w4 r5 r6 r7 r8");
    NoteVerdict wrong = verdicts.get(4);
    assertThat(wrong.decided() - wrong.note().time()).isBetween(0.0, GAP + 0.006);
  }

  @Test
  void aStepLeftOutCostsOneVerdict() {
    play(0, 0, 3);
    play(4, 5, 9);
    assertThat(said(follow())).isEqualTo("r0 r1 r2 r3 r5 r6 r7 r8 r9");
  }

  @Test
  void aWrongNoteThatIsTheNextStepsPitchIsNoStepLeftOut() {
    play(0, 0, 3);
    at(4, midi(5));
    play(5, 5, 9);
    assertThat(said(follow())).isEqualTo("r0 r1 r2 r3 w4 r5 r6 r7 r8 r9");
  }

  @Test
  void aNoteStruckTwice() {
    play(0, 0, 5);
    at(5.5, midi(5));
    play(6, 6, 9);
    assertThat(said(follow())).isEqualTo("r0 r1 r2 r3 r4 r5 t5 r6 r7 r8 r9");
  }

  @Test
  void theStepBeforeStruckInPlaceOfTheNextIsWrong() {
    play(0, 0, 5);
    at(6, midi(5));
    play(7, 7, 9);
    assertThat(said(follow())).isEqualTo("r0 r1 r2 r3 r4 r5 w6 r7 r8 r9");
  }

  @Test
  void aStrayOpenStringBelongsToNoStep() {
    play(0, 0, 6);
    at(6.5, 40);
    play(7, 7, 10);
    assertThat(said(follow())).isEqualTo("r0 r1 r2 r3 r4 r5 r6 x r7 r8 r9 r10");
  }

  @Test
  void turningOnTheLowerShapesTopNoteLeavesOutTwoSteps() {
    play(0, 0, 11);
    play(12, 14, 24);
    assertThat(said(follow())).contains("r11 r14 r15").doesNotContain("w").doesNotContain("x");
  }

  @Test
  void turningThereWithTheTopNoteStruckAgainLeavesOutOne() {
    play(0, 0, 11);
    play(12, 13, 24);
    assertThat(said(follow())).contains("r11 r13 r14").doesNotContain("t");
  }

  @Test
  void aFreshStartFromTheBottomAfterAPauseIsAnotherAttempt() {
    play(0, 0, 3);
    play(9, 0, 4);
    assertThat(said(follow())).isEqualTo("r0 r1 r2 r3 r0# r1# r2# r3# r4#");
  }

  @Test
  void aFreshStartWithNoPauseIsKnownByTheSecondNote() {
    play(0, 0, 8);
    play(9, 0, 4);
    List<NoteVerdict> verdicts = follow();
    assertThat(said(verdicts)).endsWith("r8 r0# r1# r2# r3# r4#");
    assertThat(verdicts.get(9).decided()).isEqualTo(verdicts.get(10).note().decided());
  }

  @Test
  void aStumbleOnlyDelays() {
    play(0, 0, 6);
    play(13.4, 7, 12);
    assertThat(said(follow())).isEqualTo("r0 r1 r2 r3 r4 r5 r6 r7 r8 r9 r10 r11 r12");
  }

  @Test
  void aBarPlayedAgainIsStruckTwiceAndNothingElse() {
    play(0, 0, 6);
    play(8.5, 4, 10);
    assertThat(said(follow())).isEqualTo("r0 r1 r2 r3 r4 r5 r6 t4 t5 t6 r7 r8 r9 r10");
  }

  @Test
  void aWholeTakeABeatLateIsRight() {
    play(2, 0, 24);
    assertThat(follow()).hasSize(25).allMatch(v -> v.verdict() == Verdict.RIGHT);
  }

  @Test
  void aNoteAfterTheLastStepIsExtra() {
    play(0, 0, 24);
    at(25, 60);
    assertThat(said(follow())).endsWith("r24 x");
  }

  @Test
  void theSameRunASemitoneUpHasNothingRight() {
    for (int s = 0; s < 25; s++) {
      at(s, midi(s) + 1);
    }
    assertThat(follow()).hasSize(25).noneMatch(v -> v.verdict() == Verdict.RIGHT);
  }

  @Test
  void aTakeCutOffKeepsEveryVerdictGivenByThen() {
    Random random = new Random(5);
    NotePlayer player = new NotePlayer(route, GAP, FIRST, 0.012, random);
    player.playWithSlips(
        List.of(
            new NotePlayer.Slip("wrong", 4),
            new NotePlayer.Slip("skipped", 9),
            new NotePlayer.Slip("extra", 14),
            new NotePlayer.Slip("repeat", 19)),
        0,
        0);
    List<HeardNote> heard = player.heard();
    List<NoteVerdict> whole = Following.of(route, PULSE, OptionalDouble.of(FIRST), heard);
    for (int i = 0; i < whole.size(); i++) {
      double cut = whole.get(i).decided() + 0.005;
      List<NoteVerdict> part = Following.of(route, PULSE, OptionalDouble.of(FIRST), heard, cut);
      assertThat(part.subList(0, i + 1)).isEqualTo(whole.subList(0, i + 1));
    }
  }

  @Test
  void aFretPassedOnTheWayToANoteIsNoNote() {
    play(0, 0, 3);
    double time = FIRST + 4 * GAP;
    int passed = midi(4) - 1;
    notes.add(
        new HeardNote(
            notes.size(), time, passed, passed, HeardNote.Start.PLUCK, true, -20, time + EAR));
    notes.add(
        new HeardNote(
            notes.size(),
            time + 0.06,
            midi(4),
            midi(4),
            HeardNote.Start.SLIDE,
            false,
            -20,
            time + 0.11));
    play(5, 5, 8);
    assertThat(said(follow())).isEqualTo("r0 r1 r2 r3 r4 r5 r6 r7 r8");
  }

  /** Four shapes up and down twice, 14 notes a way and more; pitches alone matter here. */
  private static Route longRoute() {
    return Routes.bare(43, 0, 4, 2, 7);
  }

  /** The first notes of a route, then notes of no route, then so many of it from a step on. */
  private List<NoteVerdict> followLost(Route on, int first, int stray, int from, int count) {
    for (int s = 0; s < first; s++) {
      at(s, on.steps().get(s).midi());
    }
    for (int i = 0; i < stray; i++) {
      at(first + i, 25 + i % 3);
    }
    for (int i = 0; i < count; i++) {
      at(first + stray + i, on.steps().get(from + i).midi());
    }
    return Following.of(on, PULSE, OptionalDouble.of(FIRST), notes);
  }

  @Test
  void aPlayerWhoLeapsFarAheadIsFoundAgainByALongRow() {
    assertThat(said(followLost(longRoute(), 4, 0, 18, 12)))
        .startsWith("r0 r1 r2 r3 ")
        .endsWith(" r25 r26 r27 r28 r29");
  }

  @Test
  void aPlayerWhoWasLostIsFoundAgainByALongRow() {
    assertThat(said(followLost(Routes.bare(43, 0, 2, 2, 7), 8, 6, 30, 12)))
        .startsWith("r0 r1 r2 r3 r4 r5 r6 r7 ")
        .endsWith(" r35 r36 r37 r38 r39 r40 r41");
  }

  /** Before anything fitted eight in a row are needed: the first seven are not called right. */
  @Test
  void aTakeThatIsCutAtTheFrontIsFoundByALongerRow() {
    List<NoteVerdict> verdicts = followLost(longRoute(), 0, 0, 33, 12);
    assertThat(said(verdicts)).endsWith(" r41 r42 r43 r44");
    assertThat(verdicts.subList(0, 7)).noneMatch(v -> v.verdict() == Verdict.RIGHT);
  }

  @Test
  void aShortRowFarAheadFindsNobody() {
    List<NoteVerdict> verdicts = followLost(longRoute(), 4, 0, 18, 5);
    assertThat(verdicts)
        .filteredOn(v -> v.verdict() == Verdict.RIGHT)
        .allMatch(v -> v.step().getAsInt() < 18);
  }

  @Test
  void noNotesNoVerdicts() {
    assertThat(follow()).isEmpty();
  }
}
