package neckway.player;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import neckway.neck.BadInput;
import neckway.neck.Direction;
import neckway.player.plan.Mistake;
import neckway.player.plan.Mistake.Kind;
import neckway.player.plan.Mistake.Slip;
import neckway.player.plan.PlayedNote;
import neckway.player.plan.PlayedShift;
import neckway.player.settings.Behaviour;
import neckway.player.settings.Behaviours;
import neckway.player.settings.Guitar;
import neckway.player.settings.Habits;
import neckway.player.settings.PlayerSettings;
import neckway.player.settings.PlayerSettings.Condition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What was asked for is what the truth says and what the samples hold. */
class TruthTests {
  private static final PlayerSettings EXACT =
      PlayerSettings.plain().withHabits(Habits.tidy().withTiming(0, 0, 0)).withFirstBeat(1);
  private static final double GAP = TestRoutes.pulse().slotSeconds();

  private static Performance play(PlayerSettings settings, Mistake... mistakes) {
    return new VirtualPlayer(settings)
        .play(TestRoutes.majorIntoDorian(1), TestRoutes.pulse(), List.of(mistakes), 3);
  }

  private static Slip slip(Kind kind, int step) {
    return new Slip(kind, step, OptionalInt.empty());
  }

  private static List<PlayedNote> of(Performance take, int step) {
    return take.notes().stream().filter(n -> n.step().equals(OptionalInt.of(step))).toList();
  }

  @Test
  void wrongNoteIsAnotherPitchInPlaceOfTheStep() {
    Performance take = play(EXACT, new Slip(Kind.WRONG, 4, OptionalInt.of(53)));
    assertThat(of(take, 4)).hasSize(1);
    assertThat(of(take, 4).get(0).kind()).isEqualTo(PlayedNote.Kind.WRONG);
    assertThat(of(take, 4).get(0).midi()).isEqualTo(53);
    assertThat(of(take, 4).get(0).time()).isCloseTo(1 + 4 * GAP, within(1e-4));
    assertThat(take.skipped()).isEmpty();
  }

  @Test
  void repeatComesAboutHalfASlotLater() {
    List<PlayedNote> both = of(play(EXACT, slip(Kind.REPEAT, 7)), 7);
    assertThat(both)
        .extracting(PlayedNote::kind)
        .containsExactly(PlayedNote.Kind.RIGHT, PlayedNote.Kind.REPEAT);
    assertThat((both.get(1).time() - both.get(0).time()) / GAP).isBetween(0.35, 0.65);
  }

  @Test
  void skippedStepIsNotThereAndIsSaid() {
    Performance take = play(EXACT, slip(Kind.SKIP, 10));
    assertThat(of(take, 10)).isEmpty();
    assertThat(take.skipped()).containsExactly(10);
    assertThat(take.notes()).hasSize(24);
  }

  @Test
  void extraNoteBelongsToNoStepAndIsNeitherNeighbour() {
    Performance take = play(EXACT, slip(Kind.EXTRA, 10));
    PlayedNote extra =
        take.notes().stream().filter(n -> n.step().isEmpty()).findFirst().orElseThrow();
    assertThat(extra.kind()).isEqualTo(PlayedNote.Kind.EXTRA);
    assertThat(extra.midi())
        .isNotEqualTo(of(take, 10).get(0).midi())
        .isNotEqualTo(of(take, 11).get(0).midi());
    assertThat(extra.time()).isBetween(1 + 10.3 * GAP, 1 + 10.7 * GAP);
  }

  @Test
  void smallLatenessIsMadeGoodAndALongStumbleComesBackInOnALaterSlot() {
    Performance small = play(EXACT, new Mistake.Late(8, 100));
    assertThat(of(small, 8).get(0).time()).isCloseTo(1.1 + 8 * GAP, within(1e-4));
    assertThat(of(small, 9).get(0).time()).isCloseTo(1 + 9 * GAP, within(1e-4));
    assertThat(small.shifts().get(0).lateMs().getAsDouble()).isCloseTo(100.0, within(0.1));
    Performance stumble = play(EXACT, new Mistake.Late(8, 1000));
    assertThat(of(stumble, 9).get(0).time()).isCloseTo(1 + 12 * GAP, within(1e-4));
    assertThat(stumble.shifts().get(0).lateMs().getAsDouble()).isCloseTo(1000.0, within(0.1));
  }

  @Test
  void missedShiftIsSaidForBothWaysWithTheStepsOutOfReachSkipped() {
    Performance take =
        play(
            EXACT,
            new Mistake.ShiftElsewhere(0, Direction.UP, OptionalInt.empty(), Optional.empty()));
    assertThat(take.shifts())
        .extracting(PlayedShift::outcome)
        .containsOnly(PlayedShift.Outcome.MISSED);
    assertThat(take.skipped()).contains(12).doesNotContain(11, 14);
    double early = (of(take, 20).get(0).time() - 1 - 20 * GAP) / GAP;
    assertThat(early).isCloseTo(-1.0 * take.skipped().size(), within(1e-3));
  }

  @Test
  void stoppingEarlyLeavesTheShiftDownUnplayed() {
    Performance take = play(EXACT.withBehaviour(Behaviours.stop(15)));
    assertThat(take.notes()).hasSize(16);
    assertThat(take.skipped()).isEmpty();
    assertThat(take.shifts())
        .extracting(PlayedShift::outcome)
        .containsExactly(PlayedShift.Outcome.MADE, PlayedShift.Outcome.UNPLAYED);
  }

  @Test
  void beginningAgainFromTheBottomIsAnotherAttempt() {
    Performance take = play(EXACT.withBehaviour(Behaviours.again(8, 5)));
    assertThat(take.notes()).hasSize(9 + 25);
    PlayedNote again = take.notes().get(9);
    assertThat(again.attempt()).isEqualTo(1);
    assertThat(again.step()).hasValue(0);
    assertThat(again.time()).isCloseTo(1 + 14 * GAP, within(1e-4));
  }

  @Test
  void aTakeABeatLateASemitoneUpAndOneOfSilence() {
    Performance late = play(EXACT.withBehaviour(Behaviours.late(2)));
    assertThat(late.notes().get(0).time()).isCloseTo(1 + 2 * GAP, within(1e-4));
    Performance up = play(EXACT.withBehaviour(Behaviours.transposed(1)));
    assertThat(up.notes().get(0).midi()).isEqualTo(44);
    Performance none = play(EXACT.withBehaviour(Behaviours.strange(Behaviour.Stranger.SILENT)));
    assertThat(none.notes()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(ints = {8_000, 44_100, 96_000})
  void onsetIsTheSampleAtWhichTheStringIsReleased(int rate) {
    Performance take = play(EXACT.withSampleRate(rate));
    int first = (int) take.notes().get(0).frame();
    assertThat(first).isEqualTo(rate);
    assertThat(take.notes().get(0).time()).isEqualTo(1.0);
    double before = peak(take.samples(), 0, first);
    double after = peak(take.samples(), first, first + rate / 250);
    assertThat(after).isGreaterThan(20 * before);
  }

  @Test
  void a4Is440HertzAsIso16SaysAndTheMidiNoteFormula() {
    // ISO 16:1975: A4 = 440 Hz. MIDI 1.0: note 69 is A4; f = 440 * 2^((n - 69) / 12).
    Performance take = play(EXACT);
    PlayedNote a4 = of(take, 11).get(0);
    assertThat(a4.midi()).isEqualTo(69);
    int from = (int) a4.frame() + 4_000;
    double hz = Partials.peakHz(take.samples(), from, 8_000, 440, 40, 44_100);
    assertThat(Partials.cents(hz, 440)).isCloseTo(0.0, within(1.5));
    PlayedNote g2 = of(take, 0).get(0);
    double g = Partials.peakHz(take.samples(), (int) g2.frame() + 4_000, 8_000, 98, 40, 44_100);
    assertThat(Partials.cents(g, 97.9989)).isCloseTo(0.0, within(2.0));
  }

  @Test
  void detunedGuitarIsOffByThatMuch() {
    Guitar flat = Guitar.Model.ELECTRIC.plain().withDetuneCents(-30);
    Performance take = play(EXACT.withGuitar(flat));
    PlayedNote a4 = of(take, 11).get(0);
    double hz = Partials.peakHz(take.samples(), (int) a4.frame() + 4_000, 8_000, 435, 40, 44_100);
    assertThat(Partials.cents(hz, 440)).isCloseTo(-30.0, within(1.5));
  }

  @ParameterizedTest
  @EnumSource(Condition.class)
  void drawnMistakesAreInTheTruth(Condition condition) {
    for (long seed = 1; seed <= 4; seed++) {
      Performance take =
          new VirtualPlayer(
                  PlayerSettings.random(seed, condition).withBehaviour(Behaviours.withMistakes(3)))
              .play(TestRoutes.majorIntoDorian(1), TestRoutes.pulse(), List.of(), seed);
      assertThat(take.mistakes()).hasSize(3);
      long notRight = take.notes().stream().filter(n -> n.kind() != PlayedNote.Kind.RIGHT).count();
      assertThat(notRight + take.skipped().size()).isEqualTo(3);
      assertThat(take.notes()).extracting(PlayedNote::frame).isSorted();
    }
  }

  @Test
  void mistakeBeyondTheRouteIsBadInput() {
    assertThatThrownBy(() -> play(EXACT, slip(Kind.SKIP, 25)))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("step 25")
        .hasMessageContaining("0 to 24");
  }

  private static double peak(float[] samples, int from, int to) {
    double peak = 0;
    for (int n = from; n < to; n++) {
      peak = Math.max(peak, Math.abs(samples[n]));
    }
    return peak;
  }
}
