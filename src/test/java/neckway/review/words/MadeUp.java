package neckway.review.words;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.IntToDoubleFunction;
import neckway.drill.PlayableDrill;
import neckway.follow.Verdict;
import neckway.hand.ShiftVerdict;
import neckway.hear.RobustStatistics;
import neckway.neck.GuitarString;
import neckway.neck.PlannedShift;
import neckway.neck.Step;
import neckway.review.Clock;
import neckway.review.Grid;
import neckway.review.GuitarKnown;
import neckway.review.PulseKept;
import neckway.review.Review;
import neckway.review.ReviewedNote;
import neckway.review.ReviewedShift;
import neckway.review.ReviewedStep;
import neckway.review.StepVerdict;
import neckway.review.Summary;
import neckway.review.TakeFigures;
import neckway.review.Timing;

/** Makes up reviews, invented note by note, by which every sentence can be shown. */
final class MadeUp {
  private static final double FIRST_BEAT = 2;

  /** A person's notes are never all on the slot: at most so far to either side. */
  private static final double SWAY_SECONDS = 0.008;

  private final PlayableDrill drill;
  private final Map<Integer, Integer> wrong = new HashMap<>();
  private final Set<Integer> leftOut = new HashSet<>();
  private final Set<Integer> unclear = new HashSet<>();
  private final List<Integer> twice = new ArrayList<>();
  private final Map<Integer, List<Integer>> besides = new HashMap<>();
  private final Map<Integer, Double> waitMs = new HashMap<>();
  private final Map<Integer, Double> offMs = new HashMap<>();
  private final Map<PlannedShift, ShiftVerdict> shifts = new HashMap<>();
  private final Map<PlannedShift, GuitarString> strings = new HashMap<>();
  private final List<Integer> earlierTries = new ArrayList<>();
  private int last;
  private double leanMs;
  private IntToDoubleFunction unevenMs = step -> 0;
  private boolean firstNoteIsTheBeat;
  private Grid.Source source = Grid.Source.GIVEN;
  private Clock clock = Clock.MEASURED;
  private GuitarKnown guitar = GuitarKnown.LEARNT;
  private OptionalDouble tuningCents = OptionalDouble.empty();

  /** The tempo that was played by the one that was asked. */
  private double pace = 1;

  private boolean multipleTaken;

  MadeUp(PlayableDrill drill) {
    this.drill = drill;
    this.last = drill.route().steps().size() - 1;
  }

  /** A step played so many semitones off. */
  MadeUp wrong(int step, int semitones) {
    wrong.put(step, drill.route().steps().get(step).midi() + semitones);
    return this;
  }

  MadeUp leftOut(int... steps) {
    for (int step : steps) {
      leftOut.add(step);
    }
    return this;
  }

  /** A step that sounded and could not be named. */
  MadeUp unclear(int step) {
    unclear.add(step);
    return this;
  }

  MadeUp twice(int step) {
    twice.add(step);
    return this;
  }

  /** A note of no step after one. */
  MadeUp besides(int after, int midi) {
    besides.computeIfAbsent(after, s -> new ArrayList<>()).add(midi);
    return this;
  }

  /** A step that comes so late; what follows waits for it. */
  MadeUp waits(int step, double ms) {
    waitMs.put(step, ms);
    return this;
  }

  /** A step that lies off its slot, and alone does so; early negative. */
  MadeUp off(int step, double ms) {
    offMs.put(step, ms);
    return this;
  }

  MadeUp shift(int index, ShiftVerdict verdict) {
    shifts.put(drill.route().shifts().get(index), verdict);
    return this;
  }

  MadeUp moved(int index, int string) {
    strings.put(drill.route().shifts().get(index), new GuitarString(string));
    return shift(index, ShiftVerdict.MOVED);
  }

  MadeUp stopsAfter(int step) {
    last = step;
    return this;
  }

  /** A try before this one, which stopped after a step. */
  MadeUp tryBefore(int lastStep) {
    earlierTries.add(lastStep);
    return this;
  }

  MadeUp leans(double ms) {
    leanMs = ms;
    return this;
  }

  MadeUp uneven(IntToDoubleFunction msOfStep) {
    unevenMs = msOfStep;
    return this;
  }

  MadeUp firstNoteIsTheBeat() {
    firstNoteIsTheBeat = true;
    return this;
  }

  MadeUp beatFrom(Grid.Source from) {
    source = from;
    return this;
  }

  MadeUp clock(Clock known) {
    clock = known;
    return this;
  }

  /** Plays so many times as fast, and the beat is found in the notes alone. */
  MadeUp paced(double times) {
    pace = times;
    source = Grid.Source.NOTES;
    return this;
  }

  /** Plays so many times as fast beside a beat that is known. */
  MadeUp pacedBesideTheBeat(double times, boolean taken) {
    pace = times;
    multipleTaken = taken;
    return this;
  }

  MadeUp ofAnotherGuitar() {
    guitar = GuitarKnown.ANOTHER;
    return this;
  }

  MadeUp guitarUnknown() {
    guitar = GuitarKnown.NOT_LEARNT;
    return this;
  }

  MadeUp tuned(double cents) {
    tuningCents = OptionalDouble.of(cents);
    return this;
  }

  PlayableDrill drill() {
    return drill;
  }

  /** The review, with the sentences that are said of it. */
  Review review() {
    double slot = slotSeconds();
    double begin = FIRST_BEAT;
    List<ReviewedNote> notes = new ArrayList<>();
    int attempt = 0;
    for (int lastStep : earlierTries) {
      for (int s = 0; s <= lastStep; s++) {
        double time = begin + s * slot + sway(s);
        notes.add(note(time, midi(s), Verdict.RIGHT, OptionalInt.of(s), attempt));
      }
      begin += (lastStep + 8) * slot;
      attempt++;
    }
    int reviewed = attempt;
    List<ReviewedNote> these = played(begin, reviewed);
    notes.addAll(these);
    List<ReviewedStep> steps =
        drill.route().steps().stream()
            .map(s -> new ReviewedStep(s, grid().due(s.index()), verdict(s.index(), these)))
            .toList();
    List<ReviewedShift> judged = drill.route().shifts().stream().map(s -> shift(s, these)).toList();
    Review review =
        new Review(
            new TakeFigures(60, 48_000, -6, -70, tuningCents),
            guitar,
            clock,
            grid(),
            notes,
            reviewed + 1,
            reviewed,
            steps,
            judged,
            figures(these, steps, judged));
    return review.withWords(Words.of(drill, review));
  }

  private List<ReviewedNote> played(double begin, int attempt) {
    double slot = slotSeconds();
    List<ReviewedNote> notes = new ArrayList<>();
    double waited = 0;
    for (int s = 0; s <= last; s++) {
      waited += waitMs.getOrDefault(s, 0.0) / 1000;
      double off = (leanMs + offMs.getOrDefault(s, 0.0) + unevenMs.applyAsDouble(s)) / 1000;
      double sway = s == 0 && firstNoteIsTheBeat ? 0 : sway(s);
      double time = begin + s * slot + waited + off + sway;
      OptionalInt step = OptionalInt.of(s);
      if (!leftOut.contains(s) && !unclear.contains(s)) {
        boolean right = !wrong.containsKey(s);
        int midi = right ? midi(s) : wrong.get(s);
        notes.add(note(time, midi, right ? Verdict.RIGHT : Verdict.WRONG, step, attempt));
      }
      if (twice.contains(s)) {
        notes.add(note(time + slot / 2, midi(s), Verdict.REPEAT, step, attempt));
      }
      for (int midi : besides.getOrDefault(s, List.of())) {
        notes.add(note(time + slot / 2, midi, Verdict.EXTRA, OptionalInt.empty(), attempt));
      }
    }
    notes.sort(Comparator.comparingDouble(ReviewedNote::time));
    return notes;
  }

  private static double sway(int step) {
    return SWAY_SECONDS * Math.sin(2.4 * step * step + 1);
  }

  private int midi(int step) {
    return drill.route().steps().get(step).midi();
  }

  private double slotSeconds() {
    return drill.pulse().slotSeconds() / pace;
  }

  private Grid grid() {
    boolean own = source == Grid.Source.NOTES || multipleTaken;
    double tempo = drill.pulse().tempo() * (source == Grid.Source.NOTES ? pace : 1);
    return new Grid(source, tempo, FIRST_BEAT, own ? slotSeconds() : drill.pulse().slotSeconds());
  }

  private ReviewedNote note(double time, int midi, Verdict verdict, OptionalInt step, int attempt) {
    double off = grid().offMs(time);
    Timing timing = Timing.of(off, grid().slotSeconds(), true);
    return new ReviewedNote(
        time,
        midi,
        0,
        verdict,
        step,
        attempt,
        grid().slot(time),
        off,
        timing,
        time + 0.04,
        List.of());
  }

  private static Optional<ReviewedNote> inPlace(int step, List<ReviewedNote> notes) {
    return notes.stream().filter(n -> n.inPlace() && n.step().getAsInt() == step).findFirst();
  }

  private StepVerdict verdict(int step, List<ReviewedNote> notes) {
    if (step > last) {
      return StepVerdict.UNPLAYED;
    }
    if (unclear.contains(step)) {
      return StepVerdict.PLAYED;
    }
    return inPlace(step, notes)
        .map(n -> n.verdict() == Verdict.RIGHT ? StepVerdict.PLAYED : StepVerdict.WRONG)
        .orElse(StepVerdict.SKIPPED);
  }

  private ReviewedShift shift(PlannedShift planned, List<ReviewedNote> notes) {
    boolean reached = planned.landingStep() <= last;
    ShiftVerdict verdict =
        reached ? shifts.getOrDefault(planned, ShiftVerdict.MADE) : ShiftVerdict.UNPLAYED;
    Optional<GuitarString> string =
        switch (verdict) {
          case MADE -> Optional.of(planned.string());
          case MOVED -> Optional.of(strings.get(planned));
          default -> Optional.empty();
        };
    OptionalDouble late =
        verdict == ShiftVerdict.MISSED
            ? OptionalDouble.empty()
            : lateMs(planned.landingStep(), notes);
    return new ReviewedShift(
        planned, verdict, string, OptionalDouble.empty(), late, OptionalDouble.empty());
  }

  /** From the note before to the landing, less the middle of all such times. */
  private OptionalDouble lateMs(int landing, List<ReviewedNote> notes) {
    List<Double> gaps = new ArrayList<>();
    for (Step step : drill.route().steps()) {
      gap(step.index(), notes).ifPresent(gaps::add);
    }
    return gap(landing, notes)
        .map(gap -> OptionalDouble.of(1000 * (gap - RobustStatistics.median(gaps))))
        .orElse(OptionalDouble.empty());
  }

  private static Optional<Double> gap(int step, List<ReviewedNote> notes) {
    return inPlace(step - 1, notes)
        .flatMap(before -> inPlace(step, notes).map(here -> here.time() - before.time()));
  }

  private Summary figures(
      List<ReviewedNote> notes, List<ReviewedStep> steps, List<ReviewedShift> judged) {
    double[] off =
        PulseKept.offMs(drill.route(), notes, notes.isEmpty() ? 0 : notes.get(0).attempt());
    return new Summary(
        notes.size(),
        count(notes, Verdict.RIGHT),
        count(notes, Verdict.WRONG),
        count(notes, Verdict.EXTRA),
        count(notes, Verdict.REPEAT),
        (int) steps.stream().filter(s -> s.verdict() == StepVerdict.SKIPPED).count(),
        off.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(RobustStatistics.median(off)),
        off.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(RobustStatistics.spread(off)),
        (int) judged.stream().filter(s -> s.verdict() == ShiftVerdict.MADE).count(),
        judged.size(),
        List.of());
  }

  private static int count(List<ReviewedNote> notes, Verdict verdict) {
    return (int) notes.stream().filter(n -> n.verdict() == verdict).count();
  }
}
