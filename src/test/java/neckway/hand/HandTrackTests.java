package neckway.hand;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.lang.ref.WeakReference;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.IntPredicate;
import neckway.Await;
import neckway.drill.Drills;
import neckway.drill.Slots;
import neckway.hear.HeardNote;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.PlannedShift;
import neckway.neck.Route;
import neckway.neck.Step;
import neckway.neck.Tuning;
import neckway.string.StringEvidence;
import org.junit.jupiter.api.Test;

/** A run from major to Dorian and back, planned up and down on the third string. */
class HandTrackTests {
  private static final double GAP = 0.3;

  private static Route route(int up) {
    return route(up, 1);
  }

  private static Route route(int up, int rounds) {
    return Drills.example(up, 3, rounds).route();
  }

  private final Route planned = route(3);
  private final HandTrack track = new HandTrack(planned, Tuning.STANDARD, 22, GAP, Slots.EVEN);

  private static HeardNote note(double time, int midi, HeardNote.Start start) {
    return new HeardNote(
        (int) Math.round(time / GAP), time, midi, midi, start, true, -20, time + 0.02);
  }

  private static StringEvidence sounds(int string, double otherLog) {
    double[] log = new double[6];
    Arrays.fill(log, otherLog);
    log[string - 1] = 0;
    return Evidence.of(log);
  }

  /** Plays a route's steps, the sound telling the string of those that are named. */
  private void play(Route route, IntPredicate played, IntPredicate told, double otherLog) {
    int slot = 0;
    for (Step step : route.steps()) {
      if (!played.test(step.index())) {
        continue;
      }
      HeardNote note = note(1 + slot++ * GAP, step.midi(), HeardNote.Start.PLUCK);
      track.inStep(note, step.index(), true);
      if (told.test(step.index())) {
        track.sounded(note.index(), sounds(step.place().string().number(), otherLog));
      }
    }
  }

  private PlannedShift shift(Direction direction) {
    return planned.shifts().stream()
        .filter(s -> s.direction() == direction)
        .findFirst()
        .orElseThrow();
  }

  private double up(int string) {
    return track.made(shift(Direction.UP), new GuitarString(string));
  }

  @Test
  void hearsAShiftMadeWhereItWasPlanned() {
    play(planned, s -> true, s -> true, -4);
    assertThat(up(3)).isGreaterThan(0.98);
    assertThat(track.made(shift(Direction.DOWN), new GuitarString(3))).isGreaterThan(0.98);
    assertThat(track.stayedBelow(shift(Direction.UP))).isLessThan(0.01);
  }

  @Test
  void hearsAShiftMadeOnTheNextStringByItsOneNote() {
    Route moved = route(4);
    int shows = track.shows(shift(Direction.UP), new GuitarString(4));
    play(moved, s -> true, s -> true, -4.6);
    assertThat(up(4)).isGreaterThan(0.9);
    assertThat(moved.steps().get(shows).place()).isNotEqualTo(planned.steps().get(shows).place());
  }

  @Test
  void doesNotKnowWhereThatNoteIsSilentOnIt() {
    Route moved = route(4);
    int shows = track.shows(shift(Direction.UP), new GuitarString(4));
    play(moved, s -> true, s -> s != shows, -4);
    assertThat(up(4)).isLessThan(0.5);
    assertThat(up(3)).isLessThan(0.9);
  }

  @Test
  void hearsAShiftMadeFarther() {
    play(route(6), s -> true, s -> true, -4);
    assertThat(up(6)).isGreaterThan(0.95);
  }

  @Test
  void hearsThatTheHandStayedByTheNotesOutOfItsReach() {
    int top = track.top(0);
    Step turn = planned.steps().get(top - 1);
    play(planned, s -> s < top, s -> false, 0);
    track.inStep(note(9, turn.midi(), HeardNote.Start.PLUCK), top + 1, true);
    HeardNote next = note(9 + GAP, planned.steps().get(top + 2).midi(), HeardNote.Start.PLUCK);
    track.inStep(next, top + 2, true);
    assertThat(track.stayedBelow(shift(Direction.UP))).isLessThan(0.6);
  }

  @Test
  void aHandThatStayedTurnsWithoutStrikingItsTopNoteAgain() {
    int top = track.top(0);
    play(planned, s -> s != top && s != top + 1, s -> false, 0);
    assertThat(track.stayedBelow(shift(Direction.UP))).isGreaterThan(0.99);
  }

  /**
   * Nothing in pitch or time tells a top note that was left out from an early turn on its shape.
   */
  @Test
  void theTopNoteAloneLeftOutIsNoProofThatTheHandStayed() {
    int top = track.top(0);
    play(planned, s -> s != top, s -> false, 0);
    assertThat(track.stayedBelow(shift(Direction.UP))).isBetween(0.5, ShiftDetector.SURE);
  }

  @Test
  void aNoteBegunWithoutAStrokeIsOnTheStringOfTheOneBefore() {
    int shows = track.shows(shift(Direction.UP), new GuitarString(3));
    play(planned, s -> s < shows, s -> true, -4);
    assertThat(up(3)).isZero();
    Step landing = planned.steps().get(shows);
    double time = 1 + shows * GAP;
    track.inStep(note(time, landing.midi(), HeardNote.Start.SLIDE), shows, true);
    assertThat(up(3)).isGreaterThan(0.85);
  }

  /** Of a shift planned on the third string, once its note seemed to begin without a stroke. */
  private static double upAfterLegato(StringEvidence landingSounds) {
    HandTrackTests run = new HandTrackTests();
    int shows = run.track.shows(run.shift(Direction.UP), new GuitarString(3));
    run.play(run.planned, s -> s < shows, s -> true, -4);
    Step landing = run.planned.steps().get(shows);
    HeardNote note = note(1 + shows * GAP, landing.midi(), HeardNote.Start.LEGATO);
    run.track.inStep(note, shows, true);
    run.track.sounded(note.index(), landingSounds);
    return run.up(3);
  }

  @Test
  void inOverdrivenSoundAStrokeMayHaveBeenMissed() {
    double clean = upAfterLegato(Evidence.of(new double[6]));
    double overdriven = upAfterLegato(Evidence.overdriven(new double[6]));
    assertThat(clean).isGreaterThan(0.85);
    assertThat(overdriven).isBetween(0.5, 0.7);
  }

  /** Plays a route whose notes can be looked at more closely; which were, and for what. */
  private Map<Integer, Set<GuitarString>> lookedAt(Route played, double otherLog) {
    Map<Integer, Set<GuitarString>> looked = new TreeMap<>();
    int slot = 0;
    for (Step step : played.steps()) {
      HeardNote note = note(1 + slot++ * GAP, step.midi(), HeardNote.Start.PLUCK);
      track.inStep(note, step.index(), true);
      StringEvidence spectrum = sounds(step.place().string().number(), otherLog);
      StringEvidence closer = sounds(step.place().string().number(), otherLog - 4.4);
      track.sounded(
          note.index(),
          new StringEvidence(
              spectrum.logs(),
              Optional.empty(),
              Optional.of(
                  strings -> {
                    looked.put(step.index(), strings);
                    return closer;
                  })));
    }
    return looked;
  }

  @Test
  void looksCloserWhereTheHandLeavesTheStringOpen() {
    Route moved = route(4);
    int shows = track.shows(shift(Direction.UP), new GuitarString(4));
    Map<Integer, Set<GuitarString>> looked = lookedAt(moved, -1);
    assertThat(looked).containsKey(shows).doesNotContainKey(0);
    assertThat(looked.get(shows)).contains(new GuitarString(3), new GuitarString(4));
    assertThat(looked.size()).isLessThan(moved.steps().size() / 4);
    assertThat(up(4)).isGreaterThan(0.95);
  }

  @Test
  void whatIsNearlyCertainIsLookedIntoOnlyWhenAskedFor() {
    int shows = track.shows(shift(Direction.UP), new GuitarString(4));
    Map<Integer, Set<GuitarString>> looked = lookedAt(route(4), -4.6);
    assertThat(looked).isEmpty();
    double before = up(4);
    assertThat(track.lookCloser(0)).isTrue();
    // the note that the shift turns on comes first
    assertThat(looked).containsOnlyKeys(shows);
    track.settle();
    assertThat(up(4)).isGreaterThan(before);
    assertThat(track.lookCloser(0)).isFalse();
  }

  @Test
  void holdsNoSoundOfANoteThatHasBeenWeighed() throws Exception {
    List<WeakReference<float[]>> sounds = new ArrayList<>();
    int slot = 0;
    for (Step step : planned.steps()) {
      HeardNote note = note(1 + slot++ * GAP, step.midi(), HeardNote.Start.PLUCK);
      track.inStep(note, step.index(), true);
      float[] sound = new float[1_000];
      sounds.add(new WeakReference<>(sound));
      StringEvidence closer = sounds(step.place().string().number(), sound[0] - 5);
      track.sounded(
          note.index(),
          new StringEvidence(
              new double[6],
              Optional.empty(),
              Optional.of(strings -> sound[0] > 1 ? sounds(1, 0) : closer)));
    }
    track.settle();
    Await.until(
        "no sound is held any more",
        30,
        () -> {
          System.gc();
          return sounds.stream().allMatch(s -> s.get() == null);
        });
    assertThat(up(3)).isGreaterThan(0.9);
  }

  @Test
  void whatIsOpenInARoundIsLookedIntoOnceItIsOver() {
    Route twice = route(3, 2);
    HandTrack track = new HandTrack(twice, Tuning.STANDARD, 22, GAP, Slots.EVEN);
    int end = twice.steps().size() / 2;
    Set<Integer> looked = new TreeSet<>();
    for (Step step : twice.steps().subList(0, end + 2)) {
      HeardNote note = note(1 + step.index() * GAP, step.midi(), HeardNote.Start.PLUCK);
      track.inStep(note, step.index(), true);
      assertThat(looked.isEmpty()).isEqualTo(step.index() <= end);
      StringEvidence evidence = sounds(step.place().string().number(), -1.5);
      track.sounded(
          note.index(),
          new StringEvidence(
              evidence.logs(),
              Optional.empty(),
              Optional.of(
                  strings -> {
                    looked.add(step.index());
                    return evidence;
                  })));
    }
    assertThat(looked).isNotEmpty();
    assertThat(track.lookCloser(0)).isFalse();
  }

  @Test
  void placesSumToOneForEveryNote() {
    play(planned, s -> true, s -> s % 2 == 0, -2);
    HeardNote stray = new HeardNote(100, 3.15, 64, 64, HeardNote.Start.PLUCK, true, -20, 3.17);
    track.stray(stray);
    for (Step step : planned.steps()) {
      HeardNote note = note(1 + step.index() * GAP, step.midi(), HeardNote.Start.PLUCK);
      List<PlaceGuess> places = track.places(note, step.midi());
      assertThat(places.stream().mapToDouble(PlaceGuess::p).sum()).isEqualTo(1, within(1e-9));
      assertThat(places.stream().max(Comparator.comparingDouble(PlaceGuess::p)).orElseThrow())
          .extracting(PlaceGuess::place)
          .isEqualTo(step.place());
    }
    assertThat(track.places(stray, 64).stream().mapToDouble(PlaceGuess::p).sum())
        .isEqualTo(1, within(1e-9));
  }

  /** Step 6 lies on string 3 if the shift is made there, and on string 4 if it was made on that. */
  @Test
  void theStringOfAWrongNoteTellsWhichOneWasMeant() {
    assertThat(upAfterAWrongNoteOn(3)).isGreaterThan(0.93);
    assertThat(upAfterAWrongNoteOn(4)).isLessThan(0.75);
  }

  private double upAfterAWrongNoteOn(int string) {
    HandTrack slipped = new HandTrack(planned, Tuning.STANDARD, 22, GAP, Slots.EVEN);
    for (Step step : planned.steps()) {
      boolean right = step.index() != 6;
      int midi = step.midi() + (right ? 0 : 1);
      HeardNote note = note(1 + step.index() * GAP, midi, HeardNote.Start.PLUCK);
      slipped.inStep(note, step.index(), right);
      int on = right ? step.place().string().number() : string;
      slipped.sounded(note.index(), sounds(on, -4.6));
    }
    return slipped.made(shift(Direction.UP), new GuitarString(3));
  }
}
