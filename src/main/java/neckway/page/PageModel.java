package neckway.page;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import neckway.drill.PlayableDrill;
import neckway.follow.NoteVerdict;
import neckway.follow.Verdict;
import neckway.hand.PlaceGuess;
import neckway.hand.ShiftDetector;
import neckway.hand.ShiftSaid;
import neckway.neck.Place;
import neckway.neck.PlannedShift;
import neckway.neck.Step;
import neckway.review.Clock;
import neckway.review.Grid;
import neckway.review.GuitarKnown;
import neckway.review.HeardAs;
import neckway.review.LateLanding;
import neckway.review.Review;
import neckway.review.ReviewedNote;
import neckway.review.ReviewedShift;
import neckway.review.ReviewedStep;
import neckway.review.StepVerdict;
import neckway.review.Timing;

/**
 * What stands on the page of one run: for each step its ink, what was heard in its place, where it
 * fell in time; for each shift what became of it. Filled in note by note or from a review, and
 * drawn by terminal and window from the same {@link PageStep}s. For one thread.
 */
public final class PageModel {
  /** How a step's figure is written. */
  public enum Ink {
    /** Not reached. */
    PALE,
    RIGHT,
    /** Struck through, with what was heard. */
    WRONG,
    /** Ringed with dots. */
    LEFT_OUT,
    /** Played, but what it was is not known. */
    UNNAMED
  }

  /** How much of what is known is shown. */
  public enum Marks {
    /** Only how far the player has come. */
    HIDDEN,
    /** Everything. */
    SHOWN
  }

  /** What is known of one step. */
  private static final class Cell {
    private Ink ink = Ink.PALE;
    private boolean twice;
    private Optional<HeardAs> heard = Optional.empty();
    private final List<String> strays = new ArrayList<>();
    private Optional<Fallen> fallen = Optional.empty();
    private OptionalInt noteOfReview = OptionalInt.empty();
    private OptionalDouble landedLateMs = OptionalDouble.empty();
    private Optional<Place> heardAt = Optional.empty();

    Cell inked(Ink now) {
      ink = now;
      return this;
    }

    Cell heardAs(HeardAs other) {
      heard = Optional.of(other);
      return this;
    }

    Cell struckAgain() {
      twice = true;
      return this;
    }

    Cell followedBy(String stray) {
      strays.add(stray);
      return this;
    }
  }

  /**
   * When the note in a step's place fell.
   *
   * @param slot the nearest slot
   * @param offMs signed distance from it, early is negative
   * @param fine whether its onset is known finely
   */
  private record Fallen(long slot, double offMs, boolean fine) {}

  private final PlayableDrill drill;
  private final int barSteps;
  private final HandWay plannedWay;
  private final Map<PlannedShift, ReviewedShift> shifts = new HashMap<>();
  private HandWay way;
  private List<Cell> cells;
  private Optional<List<PageStep>> shown = Optional.empty();
  private Marks marks = Marks.SHOWN;
  private Optional<Grid> grid = Optional.empty();
  private int attempt;
  private OptionalInt reached;
  private boolean over;
  private OptionalInt selected;
  private long version;
  private int knownSteps = Integer.MAX_VALUE;

  /** A page on which nothing was played yet. */
  public PageModel(PlayableDrill drill) {
    this.drill = drill;
    barSteps = drill.pulse().notesPerBeat() * drill.pulse().beatsPerBar();
    plannedWay = new HandWay(drill, Map.of());
    wipe();
  }

  private void wipe() {
    cells = drill.route().steps().stream().map(step -> new Cell()).toList();
    shifts.clear();
    reached = OptionalInt.empty();
    over = false;
    selected = OptionalInt.empty();
    wayChanged();
  }

  /** Something more is known of the shifts. */
  private void wayChanged() {
    way = new HandWay(drill, shifts);
    changed();
  }

  private void changed() {
    version++;
    shown = Optional.empty();
  }

  /** A clean sheet for another round. */
  public void clear() {
    attempt = 0;
    grid = Optional.empty();
    wipe();
  }

  /** Whether verdicts are shown. */
  public void show(Marks wanted) {
    if (marks != wanted) {
      marks = wanted;
      changed();
    }
  }

  /**
   * How much of the way is shown: a run in which the switches are called is known as far as it was
   * called.
   *
   * @param steps from the first
   */
  public void know(int steps) {
    if (knownSteps != steps) {
      knownSteps = steps;
      changed();
    }
  }

  /** The steps that are shown, from the first. */
  public int knownSteps() {
    return Math.min(knownSteps, steps());
  }

  public Marks marks() {
    return marks;
  }

  // ---- filling in

  /** The first beat's time is known. */
  public void begun(Grid now) {
    grid = Optional.of(now);
  }

  /** A note's verdict. A note of another attempt begins a fresh sheet. */
  public void decided(NoteVerdict verdict) {
    if (verdict.attempt() != attempt) {
      attempt = verdict.attempt();
      wipe();
    }
    Cell cell = put(verdict.verdict(), verdict.step(), verdict.note().midi());
    if (verdict.inPlace()) {
      double time = verdict.note().time();
      cell.fallen = grid.map(g -> new Fallen(g.slot(time), g.offMs(time), verdict.note().fine()));
    }
    changed();
  }

  /** A step was heard, but not what it was. */
  public void unnamed(int inAttempt, int step) {
    if (inAttempt == attempt && step == firstAhead()) {
      cells.get(step).ink = Ink.UNNAMED;
      reached = OptionalInt.of(step);
      changed();
    }
  }

  /** What became of a shift in an attempt; nothing to the page where another has begun. */
  public void shifted(int inAttempt, ShiftSaid said) {
    if (inAttempt == attempt) {
      ReviewedShift known =
          new ReviewedShift(
              said.planned(),
              said.verdict(),
              said.string(),
              said.p(),
              OptionalDouble.empty(),
              OptionalDouble.of(said.decided()));
      shifts.put(said.planned(), known);
      wayChanged();
    }
  }

  /** Everything a review says, in place of what was there. */
  public void review(Review review) {
    attempt = review.reviewed();
    grid = Optional.of(review.grid());
    wipe();
    over = true;
    boolean timesAreKnown = timesAreKnown(review);
    for (int i = 0; i < review.notes().size(); i++) {
      ReviewedNote note = review.notes().get(i);
      if (note.attempt() == attempt) {
        Cell cell = put(note.verdict(), note.step(), note.midi());
        if (note.inPlace()) {
          boolean fine = note.timing() != Timing.UNSURE;
          Fallen fallen = new Fallen(note.slot(), note.offMs(), fine);
          cell.fallen = timesAreKnown ? Optional.of(fallen) : Optional.empty();
          cell.noteOfReview = OptionalInt.of(i);
          cell.heardAt = review.guitar() == GuitarKnown.LEARNT ? heardAt(note) : Optional.empty();
        }
      }
    }
    for (ReviewedStep step : review.steps()) {
      Cell cell = cells.get(step.step().index());
      cell.ink = ink(step.verdict(), cell.noteOfReview.isPresent());
    }
    review.shifts().forEach(shift -> shifts.put(shift.planned(), shift));
    LateLanding.of(drill, review)
        .forEach(late -> cells.get(late.step()).landedLateMs = OptionalDouble.of(late.lateMs()));
    wayChanged();
  }

  /**
   * Whether the notes can be held against the beat: its place is known, and they go at its pace.
   */
  private static boolean timesAreKnown(Review review) {
    boolean ownBeat = review.grid().source() == Grid.Source.NOTES;
    return review.keepsTheGrid() && (ownBeat || review.clock() == Clock.MEASURED);
  }

  /** Where a note was played, if that is as likely as a shift must be to be said made elsewhere. */
  private static Optional<Place> heardAt(ReviewedNote note) {
    return note.places().stream()
        .filter(guess -> guess.p() >= ShiftDetector.SURE_ELSEWHERE)
        .map(PlaceGuess::place)
        .findFirst();
  }

  /** A step that counts as played though no note was told of it was heard and not named. */
  private static Ink ink(StepVerdict verdict, boolean noteTold) {
    return switch (verdict) {
      case PLAYED -> noteTold ? Ink.RIGHT : Ink.UNNAMED;
      case WRONG -> Ink.WRONG;
      case SKIPPED -> Ink.LEFT_OUT;
      case UNPLAYED -> Ink.PALE;
    };
  }

  /** Puts a note where it belongs: at its step, or at the last one reached. */
  private Cell put(Verdict verdict, OptionalInt ofStep, int midi) {
    int step = ofStep.orElse(reached.orElse(0));
    if (verdict.inPlace()) {
      reach(step);
    }
    Cell cell = cells.get(step);
    return switch (verdict) {
      case RIGHT -> cell.inked(Ink.RIGHT);
      case WRONG -> cell.inked(Ink.WRONG).heardAs(HeardAs.of(drill, step(step), midi));
      case REPEAT -> cell.struckAgain();
      case EXTRA -> cell.followedBy(HeardAs.note(drill, midi));
    };
  }

  private int firstAhead() {
    return reached.isPresent() ? reached.getAsInt() + 1 : 0;
  }

  private void reach(int step) {
    for (int left = firstAhead(); left < step; left++) {
      cells.get(left).ink = Ink.LEFT_OUT;
    }
    reached = OptionalInt.of(Math.max(step, reached.orElse(step)));
  }

  // ---- what stands there

  /** What is shown at a step. */
  public PageStep at(int step) {
    if (shown.isEmpty()) {
      Map<Integer, List<LandingMark>> landings = landings();
      shown =
          Optional.of(
              IntStream.range(0, steps())
                  .mapToObj(s -> shownAt(s, landings.getOrDefault(s, List.of())))
                  .toList());
    }
    return shown.get().get(step);
  }

  private PageStep shownAt(int step, List<LandingMark> landings) {
    Cell cell = cells.get(step);
    if (marks == Marks.HIDDEN) {
      Ink ink = reached.isPresent() && step <= reached.getAsInt() ? Ink.UNNAMED : Ink.PALE;
      return new PageStep(
          step(step),
          PlayedPlace.asPlanned(step(step).place()),
          ink,
          false,
          Optional.empty(),
          List.of(),
          Optional.empty(),
          landings);
    }
    return new PageStep(
        step(step),
        played(step),
        cell.ink,
        cell.twice,
        cell.heard,
        cell.strays,
        time(step),
        landings);
  }

  /**
   * Where a right note was played. Only what is said of the shifts speaks against the plan: the
   * sound of one note alone may deceive, above all where the profile is of another guitar.
   */
  private PlayedPlace played(int step) {
    Cell cell = cells.get(step);
    Place planned = step(step).place();
    Place underTheHand = way.place(step).orElse(planned);
    if (cell.ink != Ink.RIGHT || underTheHand.equals(planned)) {
      return PlayedPlace.asPlanned(planned);
    }
    if (cell.heardAt.isPresent()) {
      return PlayedPlace.at(cell.heardAt.get(), planned);
    }
    return way.known(step) ? PlayedPlace.at(underTheHand, planned) : PlayedPlace.notAt(planned);
  }

  /** The marks over each step, in the order in which their shifts are planned. */
  private Map<Integer, List<LandingMark>> landings() {
    return drill.route().shifts().stream()
        .flatMap(shift -> landing(shift).stream())
        .collect(Collectors.groupingBy(LandingMark::step));
  }

  private Optional<LandingMark> landing(PlannedShift shift) {
    if (marks == Marks.HIDDEN || !shifts.containsKey(shift)) {
      return Optional.of(LandingMark.untold(shift));
    }
    OptionalInt landed = way.landing(shift);
    return landed.isPresent()
        ? Optional.of(LandingMark.of(shifts.get(shift), landed.getAsInt()))
        : Optional.empty();
  }

  /** The figure of time under a step; under a landing that is said to be late, how late it was. */
  private Optional<TimeFigure> time(int step) {
    Cell cell = cells.get(step);
    if (cell.fallen.isEmpty() || grid.isEmpty()) {
      return Optional.empty();
    }
    Fallen fallen = cell.fallen.get();
    double slotMs = 1000 * grid.get().slotSeconds();
    double offMs = fallen.offMs() + slotMs * slotsWaited(step);
    Timing timing = Timing.of(offMs, grid.get().slotSeconds(), fallen.fine());
    double slots = offMs / slotMs;
    return Optional.of(
        cell.landedLateMs.isPresent()
            ? new TimeFigure(
                TimeFigure.Measure.LANDED_LATE, cell.landedLateMs.getAsDouble(), timing, slots)
            : new TimeFigure(TimeFigure.Measure.OFF_THE_BEAT, offMs, timing, slots));
  }

  /**
   * Slots that passed in waiting for a note. Its distance from the nearest slot would call a note
   * that is most of a slot late early; on the page it is as late as it came after the note before.
   */
  private long slotsWaited(int step) {
    if (step == 0) {
      return 0;
    }
    Cell before = cells.get(step - 1);
    if (before.fallen.isEmpty() || before.twice || !before.strays.isEmpty()) {
      return 0;
    }
    long slots = cells.get(step).fallen.orElseThrow().slot() - before.fallen.get().slot();
    return Math.max(0, slots - 1);
  }

  /** Changes whenever anything on the page does. */
  public long version() {
    return version;
  }

  public int steps() {
    return cells.size();
  }

  /** Steps in a bar. */
  public int barSteps() {
    return barSteps;
  }

  /** Steps by which the first one comes later than the beginning of its bar. */
  public int lead() {
    return Math.floorMod(drill.pulse().slots().offset(), barSteps);
  }

  /** The bar in which the first step lies, from 1. */
  public int firstBar() {
    return Math.floorDiv(drill.pulse().slots().offset(), barSteps) + 1;
  }

  public int bars() {
    return (cells.size() + barSteps - 1) / barSteps;
  }

  public int strings() {
    return drill.tuning().count();
  }

  /** What is to be played at a step. */
  public Step step(int index) {
    return drill.route().steps().get(index);
  }

  /** The fret of the first finger when a step is played, by what is known of the shifts. */
  public int hand(int step) {
    return shownWay().hand(step);
  }

  /** Index into the chain of the shape that the hand is in when a step is played. */
  public int stand(int step) {
    return shownWay().stand(step);
  }

  private HandWay shownWay() {
    return marks == Marks.SHOWN ? way : plannedWay;
  }

  public PlayableDrill drill() {
    return drill;
  }

  /** The attempt that the page is of, from 0. */
  public int attempt() {
    return attempt;
  }

  /** The furthest step heard, if any was. */
  public Optional<Step> here() {
    return reached.isPresent() ? Optional.of(step(reached.getAsInt())) : Optional.empty();
  }

  /** Whether the run is over, so that what was not reached is no longer to come. */
  public boolean isOver() {
    return over;
  }

  /** Index into the review's notes of the note in a step's place, if there is one. */
  public Optional<Integer> note(int step) {
    OptionalInt note = cells.get(step).noteOfReview;
    return note.isPresent() ? Optional.of(note.getAsInt()) : Optional.empty();
  }

  // ---- the note that is pointed at

  /** The step that is pointed at, if one is. */
  public Optional<Integer> selected() {
    return selected.isPresent() ? Optional.of(selected.getAsInt()) : Optional.empty();
  }

  /** Points at a step; out of bounds becomes the bound. */
  public void select(int step) {
    selected = OptionalInt.of(Math.max(0, Math.min(cells.size() - 1, step)));
    changed();
  }
}
