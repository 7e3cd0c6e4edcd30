package neckway.review;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.IntPredicate;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.drill.Slots;
import neckway.follow.NoteVerdict;
import neckway.follow.UnnamedStep;
import neckway.follow.Verdict;
import neckway.hand.ShiftDetector;
import neckway.hand.ShiftVerdict;
import neckway.hear.RobustStatistics;

/** Adds to the verdicts of a run what needs the whole take. */
public final class Reviewer {
  private static final int CENTS = 100;

  private final PlayableDrill drill;
  private final GuitarKnown guitar;
  private final ShiftDetector hand;
  private final Clock clock;

  /**
   * @param drill what the take is held against
   * @param guitar what is known of the guitar
   * @param hand what was said of the shifts, and where the notes were played
   * @param clock whether the times can be held against the click's
   */
  public Reviewer(PlayableDrill drill, GuitarKnown guitar, ShiftDetector hand, Clock clock) {
    this.guitar = guitar;
    this.drill = drill;
    this.hand = hand;
    this.clock = clock;
  }

  /**
   * @param told what was said of every note heard
   * @param toldUnnamed steps heard and not named
   * @param steady whether the pitch of a note stood still, by the note's index
   * @param firstBeat when step 0 is due, seconds, where that is given
   * @param clicks heard, seconds
   */
  public Review review(
      List<NoteVerdict> told,
      List<UnnamedStep> toldUnnamed,
      IntPredicate steady,
      OptionalDouble firstBeat,
      List<Double> clicks,
      TakeFigures take) {
    RunBounds.Inside inside = bounds(told, firstBeat, take.seconds(), steady).of(told, toldUnnamed);
    List<NoteVerdict> verdicts = inside.notes();
    List<UnnamedStep> unnamed = inside.unnamed();
    Attempt attempt = Attempt.standing(verdicts, unnamed, drill.route().steps().size());
    OptionalDouble swing = OwnSwing.of(drill, attempt.notes);
    Slots own = OwnSwing.slots(drill.pulse().slots(), swing);
    Grid grid = grid(verdicts, firstBeat, clicks, own);
    double tuning = take.tuningCents().orElse(0);
    List<ReviewedNote> notes =
        verdicts.stream()
            .map(v -> note(v, inside.toldAs().get(v.attempt()), grid, tuning))
            .toList();
    List<ReviewedStep> steps =
        drill.route().steps().stream()
            .map(s -> new ReviewedStep(s, grid.due(s.index()), attempt.verdict(s.index())))
            .toList();
    List<ReviewedShift> shifts = shifts(attempt, inside, own);
    int attempts = verdicts.stream().mapToInt(v -> v.attempt() + 1).max().orElse(0);
    return new Review(
        take,
        guitar,
        clock,
        grid,
        notes,
        attempts,
        attempt.number,
        steps,
        shifts,
        figures(attempt, notes, steps, shifts, swing));
  }

  private RunBounds bounds(
      List<NoteVerdict> told, OptionalDouble firstBeat, double seconds, IntPredicate steady) {
    Pulse pulse = drill.pulse();
    Slots own = OwnSwing.slots(pulse.slots(), OwnSwing.of(drill, told));
    double slot =
        HeardPulse.slotSeconds(NoteGrid.interOnsets(told, own)).orElse(pulse.slotSeconds());
    OptionalDouble firstDue =
        firstBeat.isPresent()
            ? OptionalDouble.of(firstBeat.getAsDouble() + pulse.dueSeconds(0))
            : OptionalDouble.empty();
    return new RunBounds(drill.route().steps().size(), slot, firstDue, seconds, steady);
  }

  private List<ReviewedShift> shifts(Attempt attempt, RunBounds.Inside inside, Slots own) {
    int toldAs = inside.toldAs().get(attempt.number);
    return new ShiftJudge(drill, attempt, toldAs, hand, own).judge();
  }

  private Grid grid(
      List<NoteVerdict> verdicts, OptionalDouble firstBeat, List<Double> clicks, Slots own) {
    OptionalDouble heard = HeardPulse.slotSeconds(NoteGrid.interOnsets(verdicts, own));
    double slot = HeardPulse.slotBesideBeat(heard, drill.pulse());
    if (firstBeat.isPresent()) {
      return Grid.of(Grid.Source.GIVEN, drill.pulse(), firstBeat.getAsDouble()).withSlot(slot);
    }
    double firstNote =
        verdicts.stream()
            .filter(NoteVerdict::inPlace)
            .findFirst()
            .map(v -> v.note().time() - own.position((long) v.step().getAsInt()) * slot)
            .orElse(verdicts.isEmpty() ? 0 : verdicts.get(0).note().time());
    return ClickGrid.of(clicks, firstNote, drill.pulse())
        .map(grid -> grid.withSlot(slot))
        .orElseGet(() -> NoteGrid.of(verdicts, firstNote, drill.pulse(), own));
  }

  private ReviewedNote note(NoteVerdict v, int toldAs, Grid grid, double tuningCents) {
    double time = v.note().time();
    int midi = v.note().midi();
    double offMs = grid.offMs(time);
    return new ReviewedNote(
        time,
        midi,
        (v.note().pitch() - midi) * CENTS - tuningCents,
        v.verdict(),
        v.step(),
        v.attempt(),
        grid.slot(time),
        offMs,
        Timing.of(offMs, grid.slotSeconds(), v.note().fine()),
        v.decided(),
        hand.places(toldAs, v.note(), midi));
  }

  private Summary figures(
      Attempt attempt,
      List<ReviewedNote> notes,
      List<ReviewedStep> steps,
      List<ReviewedShift> shifts,
      OptionalDouble swing) {
    double[] off = PulseKept.offMs(drill.route(), notes, attempt.number);
    return new Summary(
        attempt.notes.size(),
        attempt.count(Verdict.RIGHT),
        attempt.count(Verdict.WRONG),
        attempt.count(Verdict.EXTRA),
        attempt.count(Verdict.REPEAT),
        (int) steps.stream().filter(s -> s.verdict() == StepVerdict.SKIPPED).count(),
        off.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(RobustStatistics.median(off)),
        off.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(RobustStatistics.spread(off)),
        (int) shifts.stream().filter(s -> s.verdict() == ShiftVerdict.MADE).count(),
        shifts.size(),
        swing,
        List.of());
  }
}
