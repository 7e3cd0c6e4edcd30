package neckway.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import neckway.calibration.Calibration;
import neckway.calibration.Plucks;
import neckway.drill.Drills;
import neckway.drill.PlayableDrill;
import neckway.hand.ShiftVerdict;
import neckway.neck.Tuning;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.plan.Mistake;
import neckway.player.settings.PlayerSettings;
import neckway.review.Clock;
import neckway.review.Review;
import neckway.review.ReviewedShift;
import neckway.string.GuitarProfile;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A slip next to a shift is decided late; what the notes' sound told by then is not lost. */
class SlipBeforeAShiftTests {
  private static final PlayableDrill DRILL = Drills.example();
  private static GuitarProfile guitar;

  @BeforeAll
  static void learnTheGuitar() {
    VirtualPlayer player = new VirtualPlayer(PlayerSettings.plain().withTailSeconds(1));
    Performance sequence = player.calibration(Tuning.STANDARD, List.of(0, 3, 7, 12), 59);
    Plucks plucks = new Plucks(sequence.sampleRate());
    plucks.feed(sequence.samples(), 0, sequence.samples().length);
    guitar =
        new Calibration(Tuning.STANDARD, List.of(0, 3, 7, 12)).learn(plucks.finish()).profile();
  }

  private static Review review(Mistake mistake, long seed) {
    Performance take =
        new VirtualPlayer(PlayerSettings.plain())
            .play(DRILL.route(), DRILL.pulse(), List.of(mistake), seed);
    Run run =
        new Run(
            DRILL,
            Optional.of(guitar),
            take.sampleRate(),
            OptionalDouble.of(take.firstBeat()),
            Clock.MEASURED,
            verdict -> {});
    run.feed(take.samples(), 0, take.samples().length);
    return run.finish();
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 3, 4, 5, 7})
  void aNoteLeftOutBeforeTheShiftUpLeavesItHeard(int step) {
    assertThat(review(new Mistake.Slip(Mistake.Kind.SKIP, step, OptionalInt.empty()), 805).shifts())
        .extracting(ReviewedShift::verdict)
        .containsExactly(ShiftVerdict.MADE, ShiftVerdict.MADE);
  }

  /** A join on a string and one on its neighbour differ in one note; here that note is gone. */
  @ParameterizedTest
  @ValueSource(ints = {6, 8})
  void whereTheNoteThatTellsIsLeftOutTheStringStaysUnheard(int step) {
    assertThat(review(new Mistake.Slip(Mistake.Kind.SKIP, step, OptionalInt.empty()), 805).shifts())
        .extracting(ReviewedShift::verdict)
        .containsExactly(ShiftVerdict.UNHEARD, ShiftVerdict.MADE);
  }

  @ParameterizedTest
  @EnumSource(
      value = Mistake.Kind.class,
      names = {"WRONG", "REPEAT", "EXTRA"})
  void soDoesAnyOtherSlip(Mistake.Kind kind) {
    assertThat(review(new Mistake.Slip(kind, 5, OptionalInt.empty()), 805).shifts())
        .extracting(ReviewedShift::verdict)
        .containsExactly(ShiftVerdict.MADE, ShiftVerdict.MADE);
  }
}
