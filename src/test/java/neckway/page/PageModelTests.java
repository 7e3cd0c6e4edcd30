package neckway.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import neckway.desk.page.PageWords;
import neckway.drill.Drills;
import neckway.drill.PlayableDrill;
import neckway.follow.NoteVerdict;
import neckway.follow.Verdict;
import neckway.hand.ShiftSaid;
import neckway.hand.ShiftVerdict;
import neckway.hear.HeardNote;
import neckway.neck.GuitarString;
import neckway.neck.PlannedShift;
import neckway.page.PageModel.Ink;
import neckway.page.PageModel.Marks;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.plan.Mistake;
import neckway.player.settings.PlayerSettings;
import neckway.review.Clock;
import neckway.review.Grid;
import neckway.review.GuitarKnown;
import neckway.review.Review;
import neckway.review.ReviewedNote;
import neckway.review.ReviewedShift;
import neckway.review.ReviewedStep;
import neckway.review.StepVerdict;
import neckway.review.Summary;
import neckway.review.TakeFigures;
import neckway.review.Timing;
import neckway.run.Run;
import neckway.run.RunListener;
import org.junit.jupiter.api.Test;

/**
 * The page of the drill whose steps the documented drill format spells out: G major, major and
 * Dorian from fret 3, up on string 3, down on string 5.
 */
public class PageModelTests {
  private static final double GAP = 60.0 / 80 / 2;

  public static PlayableDrill drill() {
    return Drills.example();
  }

  private static NoteVerdict verdict(
      Verdict verdict, OptionalInt step, int midi, double time, int attempt) {
    HeardNote note = new HeardNote(0, time, midi, midi, HeardNote.Start.PLUCK, true, -20, time);
    return new NoteVerdict(note, verdict, step, attempt, time + 0.05);
  }

  private final PageModel page = new PageModel(drill());

  private void right(int step) {
    page.decided(
        verdict(
            Verdict.RIGHT,
            OptionalInt.of(step),
            page.step(step).midi(),
            2 + step * GAP + 0.010,
            0));
  }

  @Test
  void stepsStandInBarsWithTheHandOverThem() {
    assertThat(page.steps()).isEqualTo(25);
    assertThat(page.barSteps()).isEqualTo(8);
    assertThat(page.bars()).isEqualTo(4);
    assertThat(page.step(7).place()).hasToString("3:4");
    assertThat(IntStream.range(0, 25).filter(s -> !page.at(s).landings().isEmpty()))
        .containsExactly(7, 21);
    assertThat(page.step(21).place()).hasToString("5:5");
    // common practice, no published source: from fret 3 the major shape's hand is at fret 2, the
    // Dorian one at 4 on the low strings and at 5 on the two highest
    assertThat(page.hand(0)).isEqualTo(2);
    assertThat(page.hand(7)).isEqualTo(4);
    assertThat(page.hand(9)).isEqualTo(5);
    assertThat(page.hand(21)).isEqualTo(2);
  }

  @Test
  void notesAreInkedAsTheyCome() {
    page.begun(new Grid(Grid.Source.GIVEN, 80, 2, GAP));
    right(0);
    page.decided(verdict(Verdict.WRONG, OptionalInt.of(1), 46, 2 + GAP - 0.020, 0));
    right(3);
    page.decided(verdict(Verdict.REPEAT, OptionalInt.of(3), 50, 2 + 3.5 * GAP, 0));
    page.decided(verdict(Verdict.EXTRA, OptionalInt.empty(), 40, 2 + 3.7 * GAP, 0));
    page.unnamed(0, 4);
    assertThat(IntStream.range(0, 6).mapToObj(step -> page.at(step).ink()))
        .containsExactly(Ink.RIGHT, Ink.WRONG, Ink.LEFT_OUT, Ink.RIGHT, Ink.UNNAMED, Ink.PALE);
    // the sixth string is E2, 40: 46 is its sixth fret
    assertThat(page.at(1).heardLabel()).isEqualTo("6");
    assertThat(page.at(3).twice()).isTrue();
    assertThat(page.at(3).strays()).containsExactly("E2");
    assertThat(page.at(0).time().orElseThrow().ms()).isCloseTo(10, within(1e-6));
    assertThat(page.at(1).time().orElseThrow().slots()).isCloseTo(-0.020 / GAP, within(1e-9));
    assertThat(page.at(2).time()).isEmpty();
  }

  @Test
  void noteOutOfTheHandsReachIsNamedNotFretted() {
    page.decided(verdict(Verdict.WRONG, OptionalInt.of(0), 67, 2, 0));
    assertThat(page.at(0).heardLabel()).isEqualTo("G4");
  }

  @Test
  void hiddenMarksTellNoMoreThanHowFarThePlayerIs() {
    page.begun(new Grid(Grid.Source.GIVEN, 80, 2, GAP));
    right(0);
    page.decided(verdict(Verdict.WRONG, OptionalInt.of(1), 46, 2 + GAP, 0));
    right(3);
    page.show(Marks.HIDDEN);
    assertThat(IntStream.range(0, 5).mapToObj(step -> page.at(step).ink()))
        .containsExactly(Ink.UNNAMED, Ink.UNNAMED, Ink.UNNAMED, Ink.UNNAMED, Ink.PALE);
    assertThat(page.at(1).heardLabel()).isEmpty();
    assertThat(page.at(0).time()).isEmpty();
    page.show(Marks.SHOWN);
    assertThat(page.at(1).ink()).isEqualTo(Ink.WRONG);
  }

  @Test
  void freshStartFromTheBottomIsAFreshSheet() {
    right(0);
    right(1);
    page.decided(verdict(Verdict.RIGHT, OptionalInt.of(0), 43, 9, 1));
    assertThat(page.at(0).ink()).isEqualTo(Ink.RIGHT);
    assertThat(page.at(1).ink()).isEqualTo(Ink.PALE);
  }

  @Test
  void everyChangeShowsInTheVersionAndNothingElseDoes() {
    long before = page.version();
    page.at(3).ink();
    page.selected();
    assertThat(page.version()).isEqualTo(before);
    right(0);
    assertThat(page.version()).isNotEqualTo(before);
    before = page.version();
    page.select(99);
    assertThat(page.selected()).contains(24);
    assertThat(page.version()).isNotEqualTo(before);
  }

  @Test
  void handIsShownWhereItIsAndWhereItGoesNext() {
    assertThat(HandStand.now(page).hand()).isEqualTo(2);
    assertThat(HandStand.next(page)).contains(new HandStand(4, 1, 7));
    for (int step = 0; step <= 8; step++) {
      right(step);
    }
    assertThat(HandStand.now(page).hand()).isEqualTo(4);
    assertThat(HandStand.next(page)).contains(new HandStand(5, 1, 9));
  }

  /** What is told late of an attempt that is over leaves the page of the new one alone. */
  @Test
  void shiftMarksOnlyItsOwnAttempt() {
    PlannedShift up = drill().route().shifts().get(0);
    ShiftSaid missed =
        new ShiftSaid(up, ShiftVerdict.MISSED, Optional.empty(), OptionalDouble.of(0.97), 6);
    right(0);
    page.shifted(0, missed);
    assertThat(page.at(up.landingStep()).landings()).isEmpty();
    page.decided(verdict(Verdict.RIGHT, OptionalInt.of(0), page.step(0).midi(), 9, 1));
    assertThat(page.at(up.landingStep()).landings()).containsExactly(LandingMark.untold(up));
    long version = page.version();
    page.shifted(0, missed);
    assertThat(page.at(up.landingStep()).landings()).containsExactly(LandingMark.untold(up));
    assertThat(page.version()).isEqualTo(version);
  }

  @Test
  void pageFilledInLiveIsThePageOfTheReview() {
    PlayableDrill drill = drill();
    Performance take =
        new VirtualPlayer(PlayerSettings.plain())
            .play(
                drill.route(),
                drill.pulse(),
                List.of(
                    new Mistake.Slip(Mistake.Kind.WRONG, 9, OptionalInt.empty()),
                    new Mistake.Slip(Mistake.Kind.SKIP, 13, OptionalInt.empty()),
                    new Mistake.Slip(Mistake.Kind.REPEAT, 16, OptionalInt.empty())),
                7);
    PageModel live = new PageModel(drill);
    live.begun(new Grid(Grid.Source.GIVEN, 80, take.firstBeat(), GAP));
    Run run =
        new Run(
            drill,
            Optional.empty(),
            take.sampleRate(),
            OptionalDouble.of(take.firstBeat()),
            Clock.MEASURED,
            new RunListener() {
              @Override
              public void decided(NoteVerdict verdict) {
                live.decided(verdict);
              }

              @Override
              public void unnamed(int attempt, int step) {
                live.unnamed(attempt, step);
              }

              @Override
              public void shifted(int attempt, ShiftSaid said) {
                live.shifted(attempt, said);
              }
            });
    run.feed(take.samples(), 0, take.samples().length);
    Review review = run.finish();
    PageModel read = new PageModel(drill);
    read.review(review);
    for (int step = 0; step < read.steps(); step++) {
      assertThat(live.at(step).sign()).as("step " + step).isEqualTo(read.at(step).sign());
      assertThat(live.at(step).heard()).isEqualTo(read.at(step).heard());
      assertThat(live.at(step).landings()).isEqualTo(read.at(step).landings());
      assertThat(live.at(step).timeLabel()).isEqualTo(read.at(step).timeLabel());
    }
    assertThat(read.at(9).ink()).isEqualTo(Ink.WRONG);
    assertThat(read.at(13).ink()).isEqualTo(Ink.LEFT_OUT);
    assertThat(read.at(16).twice()).isTrue();
  }

  /** The player waits most of a slot before step 2, and goes on a slot later. */
  @Test
  void aNoteWaitedForIsLateNotEarly() {
    page.begun(new Grid(Grid.Source.GIVEN, 80, 2, GAP));
    right(0);
    right(1);
    double late = 2 + 2 * GAP + 0.7 * GAP;
    page.decided(verdict(Verdict.RIGHT, OptionalInt.of(2), page.step(2).midi(), late, 0));
    double next = 2 + 4 * GAP + 0.005;
    page.decided(verdict(Verdict.RIGHT, OptionalInt.of(3), page.step(3).midi(), next, 0));
    // 0.7 x 375 ms
    assertThat(page.at(2).timeLabel()).isEqualTo("+263");
    assertThat(page.at(2).time().orElseThrow().slots()).isCloseTo(0.7, within(1e-9));
    assertThat(page.at(3).timeLabel()).isEqualTo("+5");
  }

  /** A stray note took the slot: nobody waited. */
  @Test
  void aSlotThatAStrayNoteTookIsNoWait() {
    page.begun(new Grid(Grid.Source.GIVEN, 80, 2, GAP));
    right(0);
    page.decided(verdict(Verdict.EXTRA, OptionalInt.empty(), 64, 2 + GAP, 0));
    double next = 2 + 2 * GAP - 0.020;
    page.decided(verdict(Verdict.RIGHT, OptionalInt.of(1), page.step(1).midi(), next, 0));
    assertThat(page.at(1).timeLabel()).isEqualTo("-20");
  }

  /** Made on another string, a shift lands on another note: the figure stands under that one. */
  @Test
  void lateLandingElsewhereHasItsFigureUnderTheNoteItLandedOn() {
    PlayableDrill drill = drill();
    double[] late = new double[25];
    Arrays.setAll(late, step -> step < 10 ? 0 : 0.120);
    List<NoteVerdict> notes =
        IntStream.range(0, 25)
            .mapToObj(
                s ->
                    verdict(
                        Verdict.RIGHT,
                        OptionalInt.of(s),
                        drill.route().steps().get(s).midi(),
                        2 + s * GAP + late[s],
                        0))
            .toList();
    Review review =
        new Review(
            new TakeFigures(20, 44_100, -6, -60, OptionalDouble.empty()),
            GuitarKnown.LEARNT,
            Clock.MEASURED,
            new Grid(Grid.Source.GIVEN, 80, 2, GAP),
            notes.stream().map(PageModelTests::reviewed).toList(),
            1,
            0,
            drill.route().steps().stream()
                .map(s -> new ReviewedStep(s, 2 + s.index() * GAP, StepVerdict.PLAYED))
                .toList(),
            List.of(
                new ReviewedShift(
                    drill.route().shifts().get(0),
                    ShiftVerdict.MOVED,
                    Optional.of(new GuitarString(2)),
                    OptionalDouble.of(0.9),
                    OptionalDouble.of(120),
                    OptionalDouble.of(6))),
            new Summary(
                25,
                25,
                0,
                0,
                0,
                0,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                0,
                2,
                List.of()));
    page.review(review);
    assertThat(page.at(7).landingSign()).isEmpty();
    assertThat(page.at(10).landingSign()).isEqualTo("^2");
    assertThat(page.at(7).timeLabel()).isEqualTo("0");
    List<Integer> landed =
        IntStream.range(0, 25)
            .filter(
                s -> page.at(s).time().orElseThrow().measure() == TimeFigure.Measure.LANDED_LATE)
            .boxed()
            .toList();
    // common practice, no source: the cleanest way up on string 2 is by the fourth finger, from
    // fret
    // 5 to 8, and 2:8 is step 10
    assertThat(landed).containsExactly(10);
    assertThat(page.at(10).timeLabel()).isEqualTo("+120");
  }

  private static ReviewedNote reviewed(NoteVerdict v) {
    Grid grid = new Grid(Grid.Source.GIVEN, 80, 2, GAP);
    double offMs = grid.offMs(v.note().time());
    return new ReviewedNote(
        v.note().time(),
        v.note().midi(),
        0,
        v.verdict(),
        v.step(),
        v.attempt(),
        grid.slot(v.note().time()),
        offMs,
        Timing.of(offMs, GAP, true),
        v.decided(),
        List.of());
  }

  @Test
  void stepInWordsSaysPlaceVerdictAndTime() {
    page.begun(new Grid(Grid.Source.GIVEN, 80, 2, GAP));
    page.decided(verdict(Verdict.WRONG, OptionalInt.of(0), 45, 2.060, 0));
    assertThat(new PageWords().spoken(page, 0))
        .isEqualTo("Note 1: sixth string, fret 3, finger 2. Wrong: fret 5 was heard. 60 ms late.");
  }
}
