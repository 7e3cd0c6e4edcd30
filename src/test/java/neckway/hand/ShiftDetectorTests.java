package neckway.hand;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import neckway.drill.Drills;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.follow.NoteVerdict;
import neckway.follow.Verdict;
import neckway.hear.HeardNote;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.JoinChoice;
import neckway.neck.Place;
import neckway.neck.PlannedShift;
import neckway.neck.Route;
import neckway.neck.Step;
import neckway.neck.Tuning;
import neckway.string.GuitarProfile;
import neckway.string.StringEvidence;
import neckway.string.StringProfile;
import org.junit.jupiter.api.Test;

/** A run from major to Dorian in G, planned up on the third string and down on the fifth. */
class ShiftDetectorTests {
  private static final double GAP = 0.375;
  private static final Pulse PULSE = new Pulse(80, 2, 4, 4);

  private static Route route(int up, int down) {
    return Drills.example(up, down, 1).route();
  }

  private final Route planned = route(3, 5);
  private final List<ShiftSaid> said = new ArrayList<>();
  private ShiftDetector watch = detector(Optional.empty());
  private double time = 2;
  private int heard;

  private ShiftDetector detector(Optional<GuitarProfile> guitar) {
    return new ShiftDetector(Drills.example(), guitar, (attempt, shift) -> said.add(shift));
  }

  /** Plays steps; the sound of each, heard out a little later, fits its string so well. */
  private void play(List<Step> steps, double otherLog) {
    play(steps, otherLog, Evidence::of);
  }

  private void play(
      List<Step> steps, double otherLog, Function<double[], StringEvidence> evidence) {
    for (Step step : steps) {
      HeardNote note = next(step);
      watch.decided(right(note, step, time + 0.02));
      watch.sounded(note, evidence.apply(log(step, otherLog)), time + 0.16);
      time += GAP;
    }
  }

  /** The same where each note's verdict waits until the next note has been heard. */
  private void playWithVerdictsOneNoteLate(List<Step> steps, double otherLog) {
    for (Step step : steps) {
      HeardNote note = next(step);
      time += GAP;
      watch.sounded(note, new StringEvidence(log(step, otherLog)), time);
      watch.decided(right(note, step, time + 0.02));
    }
  }

  private HeardNote next(Step step) {
    return new HeardNote(
        heard++, time, step.midi(), step.midi(), HeardNote.Start.PLUCK, true, -20, time + 0.02);
  }

  private static NoteVerdict right(HeardNote note, Step step, double decided) {
    return new NoteVerdict(note, Verdict.RIGHT, OptionalInt.of(step.index()), 0, decided);
  }

  private static double[] log(Step step, double otherLog) {
    double[] log = new double[6];
    Arrays.fill(log, otherLog);
    log[step.place().string().number() - 1] = 0;
    return log;
  }

  private ShiftSaid of(Direction direction) {
    return said.stream()
        .filter(s -> s.planned().direction() == direction)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void saysAShiftWasMadeAsSoonAsItsLastNoteHasBeenHeardOut() {
    play(planned.steps(), -4.6);
    ShiftSaid up = of(Direction.UP);
    assertThat(up.verdict()).isEqualTo(ShiftVerdict.MADE);
    assertThat(up.p().getAsDouble()).isGreaterThan(ShiftDetector.SURE);
    // the last note on the third string is step 8
    assertThat(up.decided()).isBetween(2 + 8 * GAP, 2 + 8 * GAP + 2 * GAP);
    assertThat(of(Direction.DOWN).verdict()).isEqualTo(ShiftVerdict.MADE);
    assertThat(said).hasSize(2);
  }

  @Test
  void whatTheSoundToldBeforeTheVerdictCountsAsWell() {
    playWithVerdictsOneNoteLate(planned.steps(), -4.6);
    assertThat(of(Direction.UP).verdict()).isEqualTo(ShiftVerdict.MADE);
    assertThat(of(Direction.DOWN).verdict()).isEqualTo(ShiftVerdict.MADE);
    // the last note on the third string is step 8
    assertThat(of(Direction.UP).decided()).isBetween(2 + 8 * GAP, 2 + 8 * GAP + 2 * GAP);
  }

  @Test
  void theSoundOfANoteThatWasPassedOverIsForgotten() {
    Step first = planned.steps().get(0);
    HeardNote passedOver = next(first);
    watch.sounded(passedOver, new StringEvidence(log(first, -4.6)), time);
    playWithVerdictsOneNoteLate(planned.steps(), -4.6);
    assertThat(of(Direction.UP).verdict()).isEqualTo(ShiftVerdict.MADE);
  }

  @Test
  void saysWhereAShiftWasMadeInstead() {
    play(route(5, 5).steps(), -4.6);
    assertThat(of(Direction.UP).verdict()).isEqualTo(ShiftVerdict.MOVED);
    assertThat(of(Direction.UP).string()).isEqualTo(Optional.of(new GuitarString(5)));
    assertThat(of(Direction.DOWN).verdict()).isEqualTo(ShiftVerdict.MADE);
  }

  /** Each note that lies elsewhere is 5.2 times less likely there: the plan counts as much. */
  @Test
  void theSoundMustSpeakForAShiftAsPlanned() {
    play(planned.steps(), -1.65);
    assertThat(of(Direction.UP).verdict()).isEqualTo(ShiftVerdict.UNHEARD);
    ShiftDetectorTests clearer = new ShiftDetectorTests();
    clearer.play(planned.steps(), -2.5);
    assertThat(clearer.of(Direction.UP).verdict()).isEqualTo(ShiftVerdict.MADE);
    assertThat(clearer.of(Direction.UP).p().getAsDouble()).isGreaterThan(ShiftDetector.SURE_MADE);
  }

  private static ShiftDetectorTests onAGuitar(double lnThird, double spread) {
    List<StringProfile> strings = new ArrayList<>();
    // the fourth string is at ln B = -9 where both have a pitch
    double[] ln = {-6, -7.5, -9 - 5 * StringProfile.LN_PER_FRET, lnThird, -10.5, -12};
    for (GuitarString string : Tuning.STANDARD.strings()) {
      strings.add(
          new StringProfile(
              string,
              Tuning.STANDARD.openMidi(string),
              0,
              ln[strings.size()],
              string.number() == 3 || string.number() == 4 ? spread : 0.01,
              4));
    }
    ShiftDetectorTests on = new ShiftDetectorTests();
    on.watch = on.detector(Optional.of(new GuitarProfile(strings)));
    return on;
  }

  /** Each note that lies elsewhere is 6.7 times less likely there. */
  @Test
  void aStringThatSoundsLikeTheNextOneIsNotGuessed() {
    ShiftDetectorTests apart = onAGuitar(-8.7, 0.04);
    apart.play(planned.steps(), -1.9);
    assertThat(apart.said).allMatch(s -> s.verdict() == ShiftVerdict.MADE);
    ShiftDetectorTests alike = onAGuitar(-8.9, 0.04);
    alike.play(planned.steps(), -1.9);
    assertThat(alike.of(Direction.UP).verdict()).isEqualTo(ShiftVerdict.UNHEARD);
    assertThat(alike.of(Direction.DOWN).verdict()).isEqualTo(ShiftVerdict.MADE);
  }

  /** 27 times, so that sound without plan makes more than 0.9 of it. */
  @Test
  void whereTwoStringsSoundAlikeTheSoundMustTellWithoutThePlan() {
    ShiftDetectorTests alike = onAGuitar(-8.9, 0.04);
    alike.play(planned.steps(), -3.3);
    assertThat(alike.of(Direction.UP).verdict()).isEqualTo(ShiftVerdict.MADE);
    assertThat(alike.of(Direction.UP).p().getAsDouble()).isGreaterThan(ShiftDetector.SURE_ALIKE);
  }

  @Test
  void aStringFairlyToldFromTheNextMustBeSurer() {
    ShiftDetectorTests well = onAGuitar(-8.7, 0.04);
    well.play(planned.steps(), -1.7);
    assertThat(well.of(Direction.UP).verdict()).isEqualTo(ShiftVerdict.MADE);
    ShiftDetectorTests fairly = onAGuitar(-8.8, 0.04);
    fairly.play(planned.steps(), -1.7);
    assertThat(fairly.of(Direction.UP).verdict()).isEqualTo(ShiftVerdict.UNHEARD);
  }

  @Test
  void aShiftElsewhereMustBeSurer() {
    ShiftDetectorTests asPlanned = new ShiftDetectorTests();
    asPlanned.play(planned.steps(), -3.3);
    assertThat(asPlanned.of(Direction.UP).verdict()).isEqualTo(ShiftVerdict.MADE);
    play(route(5, 5).steps(), -3.3);
    assertThat(of(Direction.UP).verdict()).isEqualTo(ShiftVerdict.UNHEARD);
  }

  /**
   * Step 6 alone lies on another string if the shift is made on the fourth string and not on the
   * third. Without it every note is the same, so that no sound can tell.
   */
  @Test
  void aShiftWhoseOneTellingNoteIsLeftOutIsNotGuessed() {
    List<Step> here = new ArrayList<>(planned.steps());
    List<Step> onTheNextString = new ArrayList<>(route(4, 5).steps());
    assertThat(here.remove(6).place()).isNotEqualTo(onTheNextString.remove(6).place());
    assertThat(here).extracting(Step::place).isEqualTo(places(onTheNextString));
    play(here, -4.6);
    watch.finish(time);
    assertThat(of(Direction.UP).verdict()).isEqualTo(ShiftVerdict.UNHEARD);
    assertThat(of(Direction.DOWN).verdict()).isEqualTo(ShiftVerdict.MADE);
  }

  /** Every other slip about the shift leaves it told. */
  @Test
  void aNoteLeftOutThatLiesOnTheSameStringEitherWayDoesNoHarm() {
    for (int leftOut : new int[] {5, 7}) {
      ShiftDetectorTests run = new ShiftDetectorTests();
      List<Step> steps = new ArrayList<>(planned.steps());
      steps.remove(leftOut);
      run.play(steps, -4.6);
      run.watch.finish(run.time);
      assertThat(run.said).hasSize(2).allMatch(s -> s.verdict() == ShiftVerdict.MADE);
    }
  }

  private static List<Place> places(List<Step> steps) {
    return steps.stream().map(Step::place).toList();
  }

  @Test
  void saysNothingOfWhatTheSoundDoesNotTell() {
    play(planned.steps(), 0);
    watch.finish(time);
    assertThat(said).hasSize(2).allMatch(s -> s.verdict() == ShiftVerdict.UNHEARD);
    assertThat(said).allMatch(s -> s.p().isEmpty() && s.string().isEmpty());
  }

  @Test
  void saysThatTheHandStayedOnceItHasTurnedRound() {
    List<Step> stayed = new ArrayList<>(planned.steps());
    stayed.removeAll(planned.steps().subList(12, 14));
    play(stayed, 0);
    watch.finish(time);
    assertThat(said).hasSize(2).allMatch(s -> s.verdict() == ShiftVerdict.MISSED);
    assertThat(of(Direction.UP).decided()).isBetween(2 + 12 * GAP, 2 + 14 * GAP);
  }

  @Test
  void theTopNoteAloneLeftOutIsNoMissedShift() {
    List<Step> oneMissing = new ArrayList<>(planned.steps());
    oneMissing.remove(12);
    play(oneMissing, 0);
    watch.finish(time);
    assertThat(said).hasSize(2).allMatch(s -> s.verdict() == ShiftVerdict.UNHEARD);
  }

  @Test
  void theSoundTellsThatTheHandWasAboveThoughTheTopNoteIsLeftOut() {
    List<Step> oneMissing = new ArrayList<>(planned.steps());
    oneMissing.remove(12);
    play(oneMissing, -4.6);
    watch.finish(time);
    assertThat(said).hasSize(2).allMatch(s -> s.verdict() == ShiftVerdict.MADE);
  }

  /** Down to the lowest note of the upper shape, each on the string where that shape has it. */
  private void playDownInTheUpperShape(int lastStep) {
    play(planned.steps().subList(0, 13), -4.6);
    for (Step step : route(3, 6).steps().subList(13, lastStep + 1)) {
      play(List.of(step), -4.6);
    }
    watch.finish(time);
  }

  @Test
  void aHandThatStaysAboveHasMissedTheWayDown() {
    playDownInTheUpperShape(23);
    assertThat(of(Direction.UP).verdict()).isEqualTo(ShiftVerdict.MADE);
    assertThat(of(Direction.DOWN).verdict()).isEqualTo(ShiftVerdict.MISSED);
  }

  @Test
  void theNextRoundsFirstNoteDoesNotBringAHandDownInTime() {
    Route rounds = Drills.example(3, 5, 2).route();
    ShiftDetector twice =
        new ShiftDetector(
            Drills.example(3, 5, 2), Optional.empty(), (attempt, shift) -> said.add(shift));
    Route late = Drills.example(3, 6, 2).route();
    for (Step step : late.steps()) {
      Step played = step.index() < 25 ? step : rounds.steps().get(step.index());
      HeardNote note = next(played);
      twice.decided(right(note, played, time + 0.02));
      twice.sounded(note, new StringEvidence(log(played, -4.6)), time + 0.16);
      time += GAP;
    }
    twice.finish(time);
    assertThat(said)
        .extracting(ShiftSaid::verdict)
        .containsExactly(
            ShiftVerdict.MADE, ShiftVerdict.MISSED, ShiftVerdict.MADE, ShiftVerdict.MADE);
  }

  @Test
  void aShiftPlannedForTheLastNoteIsMadeThere() {
    ShiftDetector twice =
        new ShiftDetector(
            Drills.example(3, 6, 2), Optional.empty(), (attempt, shift) -> said.add(shift));
    for (Step step : Drills.example(3, 6, 2).route().steps()) {
      HeardNote note = next(step);
      twice.decided(right(note, step, time + 0.02));
      twice.sounded(note, new StringEvidence(log(step, -4.6)), time + 0.16);
      time += GAP;
    }
    twice.finish(time);
    assertThat(said).hasSize(4).allMatch(s -> s.verdict() == ShiftVerdict.MADE);
  }

  /** G major, three shapes up on strings 4 and 2 and down on these. */
  private static PlayableDrill threeShapes(int firstDown, int thenDown, int rounds) {
    return Drills.of(
        "G major",
        "major,dorian,phrygian",
        OptionalInt.of(3),
        List.of(JoinChoice.on(4), JoinChoice.on(2)),
        List.of(JoinChoice.on(firstDown), JoinChoice.on(thenDown)),
        rounds);
  }

  /**
   * What is said of each shift where the hand stays in the highest of three shapes to the end of
   * the first round. Two of the round's notes are out of its reach.
   */
  private List<ShiftVerdict> stayedInTheHighest(PlayableDrill drill) {
    watch = new ShiftDetector(drill, Optional.empty(), (attempt, shift) -> said.add(shift));
    List<Step> asPlanned = drill.route().steps();
    List<Step> above = threeShapes(6, 6, 1).route().steps();
    int top = (above.size() - 1) / 2;
    play(asPlanned.subList(0, top + 1), -4.6);
    play(above.subList(top + 1, above.size() - 2), -4.6);
    if (asPlanned.size() > above.size()) {
      play(asPlanned.subList(above.size() - 1, asPlanned.size()), -4.6);
    }
    watch.finish(time);
    return said.stream()
        .sorted(Comparator.comparing(s -> drill.route().shifts().indexOf(s.planned())))
        .map(ShiftSaid::verdict)
        .toList();
  }

  @Test
  void aHandThatStaysTwoShapesUpHasMissedBothShiftsDown() {
    ShiftVerdict[] expected = {
      ShiftVerdict.MADE, ShiftVerdict.MADE, ShiftVerdict.MISSED, ShiftVerdict.MISSED
    };
    assertThat(stayedInTheHighest(threeShapes(3, 5, 1))).containsExactly(expected);
    assertThat(new ShiftDetectorTests().stayedInTheHighest(threeShapes(1, 3, 1)))
        .containsExactly(expected);
    assertThat(new ShiftDetectorTests().stayedInTheHighest(threeShapes(3, 6, 1)))
        .containsExactly(expected);
  }

  /** It comes down for the next round's first note, planned there or not: that is no shift made. */
  @Test
  void theNextRoundsFirstNoteBringsAHandDownFromTwoShapesUp() {
    ShiftVerdict[] expected = {
      ShiftVerdict.MADE, ShiftVerdict.MADE, ShiftVerdict.MISSED, ShiftVerdict.MISSED,
      ShiftVerdict.MADE, ShiftVerdict.MADE, ShiftVerdict.MADE, ShiftVerdict.MADE
    };
    assertThat(stayedInTheHighest(threeShapes(3, 5, 2))).containsExactly(expected);
    assertThat(new ShiftDetectorTests().stayedInTheHighest(threeShapes(5, 6, 2)))
        .containsExactly(expected);
  }

  /** Planned for the last note, which the upper shape does not reach: he stopped, or had to. */
  @Test
  void whetherAPlayerStoppedOrCouldNotGoOnIsNotGuessed() {
    PlayableDrill drill =
        Drills.of(
            "G major",
            "major,dorian",
            OptionalInt.of(3),
            List.of(JoinChoice.on(3)),
            List.of(JoinChoice.on(6, 2)),
            1);
    PlannedShift down = drill.route().shifts().get(1);
    assertThat(down.landingStep()).isEqualTo(drill.route().steps().size() - 1);
    watch = new ShiftDetector(drill, Optional.empty(), (attempt, shift) -> said.add(shift));
    play(drill.route().steps().subList(0, down.landingStep()), -4.6);
    watch.finish(time);
    assertThat(of(Direction.DOWN).verdict()).isEqualTo(ShiftVerdict.UNHEARD);
    ShiftDetectorTests stopped = new ShiftDetectorTests();
    stopped.watch =
        new ShiftDetector(drill, Optional.empty(), (attempt, shift) -> stopped.said.add(shift));
    stopped.play(drill.route().steps().subList(0, down.landingStep() - 1), -4.6);
    stopped.watch.finish(stopped.time);
    assertThat(stopped.said).extracting(ShiftSaid::planned).doesNotContain(down);
  }

  @Test
  void oneWhoStopsOnTheWayDownHasNotMissedIt() {
    playDownInTheUpperShape(20);
    assertThat(said).extracting(ShiftSaid::verdict).doesNotContain(ShiftVerdict.MISSED);
  }

  @Test
  void whatWasSaidIsKept() {
    play(planned.steps().subList(0, 11), -4.6);
    ShiftSaid before = of(Direction.UP);
    play(planned.steps().subList(11, 25), -4.6);
    watch.finish(time);
    assertThat(said.stream().filter(s -> s.planned().direction() == Direction.UP))
        .containsExactly(before);
    assertThat(watch.said(0, before.planned())).contains(before);
  }

  @Test
  void aShiftBeforeWhichThePlayerStoppedIsNotSpokenOf() {
    play(planned.steps().subList(0, 5), -4.6);
    watch.finish(time);
    assertThat(said).isEmpty();
  }
}
