package neckway.page;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import neckway.drill.PlayableDrill;
import neckway.follow.NoteVerdict;
import neckway.follow.Verdict;
import neckway.hand.ShiftSaid;
import neckway.hand.ShiftVerdict;
import neckway.neck.Direction;
import neckway.neck.PlannedShift;
import neckway.neck.Step;
import neckway.review.Grid;
import neckway.review.Review;
import neckway.review.ReviewedNote;
import neckway.review.ReviewedShift;
import neckway.review.StepVerdict;
import neckway.review.Timing;

/**
 * What stands on the page of one run: for each step its ink, what was heard in its place, where it
 * fell in time; for each join what became of it. Filled in note by note or from a review. For one
 * thread.
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

  private static final int REACH_FRETS = 4;

  private final PlayableDrill drill;
  private final int barSteps;
  private final Ink[] ink;
  private final boolean[] twice;
  private final String[] heard;
  private final boolean[] timed;
  private final boolean[] fine;
  private final double[] offSlots;
  private final String[] strays;
  private final int[] noteOf;
  private final ShiftMark[] landings;
  private final double slotSeconds;
  private Marks marks = Marks.SHOWN;
  private Grid grid;
  private int attempt;
  private int reached = -1;
  private int selected = -1;
  private long version;

  /** What is known of the shift that lands on a step. */
  private static final class ShiftMark {
    private final PlannedShift planned;
    private Optional<ShiftVerdict> verdict = Optional.empty();
    private String madeOn = "";
    private Double lateMs;

    ShiftMark(PlannedShift planned) {
      this.planned = planned;
    }

    void clear() {
      verdict = Optional.empty();
      madeOn = "";
      lateMs = null;
    }
  }

  /** A page on which nothing was played yet. */
  public PageModel(PlayableDrill drill) {
    this.drill = drill;
    slotSeconds = drill.pulse().slotSeconds();
    barSteps = drill.pulse().notesPerBeat() * drill.pulse().beatsPerBar();
    int steps = drill.route().steps().size();
    ink = new Ink[steps];
    twice = new boolean[steps];
    heard = new String[steps];
    timed = new boolean[steps];
    fine = new boolean[steps];
    offSlots = new double[steps];
    strays = new String[steps];
    noteOf = new int[steps];
    landings = new ShiftMark[steps];
    drill.route().shifts().forEach(s -> landings[s.landingStep()] = new ShiftMark(s));
    wipe();
  }

  private void wipe() {
    Arrays.fill(ink, Ink.PALE);
    Arrays.fill(twice, false);
    Arrays.fill(heard, "");
    Arrays.fill(timed, false);
    Arrays.fill(strays, "");
    Arrays.fill(noteOf, -1);
    for (ShiftMark mark : landings) {
      if (mark != null) {
        mark.clear();
      }
    }
    reached = -1;
    selected = -1;
    version++;
  }

  /** A clean sheet for another round. */
  public void clear() {
    attempt = 0;
    grid = null;
    wipe();
  }

  /** Whether verdicts are shown. */
  public void show(Marks wanted) {
    if (marks != wanted) {
      marks = wanted;
      version++;
    }
  }

  public Marks marks() {
    return marks;
  }

  // ---- filling in

  /** The first beat's time is known. */
  public void begun(Grid now) {
    grid = now;
  }

  /** A note's verdict. */
  public void decided(NoteVerdict verdict) {
    if (verdict.attempt() != attempt) {
      attempt = verdict.attempt();
      wipe();
    }
    int step = verdict.step().orElse(Math.max(0, reached));
    if (verdict.inPlace()) {
      for (int left = reached + 1; left < step; left++) {
        ink[left] = Ink.LEFT_OUT;
      }
      reached = Math.max(reached, step);
    }
    put(step, verdict.verdict(), verdict.note().midi());
    if (verdict.inPlace() && grid != null) {
      time(step, grid.offMs(verdict.note().time()), verdict.note().fine());
    }
    version++;
  }

  /** A step was heard, but not what it was. */
  public void unnamed(int inAttempt, int step) {
    if (inAttempt == attempt && step == reached + 1) {
      ink[step] = Ink.UNNAMED;
      reached = step;
      version++;
    }
  }

  /** What became of a shift in an attempt; nothing to the page where another has begun. */
  public void shifted(int inAttempt, ShiftSaid said) {
    if (inAttempt != attempt) {
      return;
    }
    ShiftMark mark = landings[said.planned().landingStep()];
    mark.verdict = Optional.of(said.verdict());
    mark.madeOn = said.string().map(Object::toString).orElse("");
    version++;
  }

  /** Everything a review says, in place of what was there. */
  public void review(Review review) {
    attempt = review.reviewed();
    wipe();
    review.steps().forEach(s -> ink[s.step().index()] = inkOf(s.verdict()));
    int last = 0;
    for (int i = 0; i < review.notes().size(); i++) {
      ReviewedNote note = review.notes().get(i);
      if (note.attempt() != attempt) {
        continue;
      }
      int step = note.step().orElse(last);
      if (note.verdict() == Verdict.WRONG) {
        heard[step] = heardAs(step, note.midi());
      } else if (note.verdict() != Verdict.RIGHT) {
        put(step, note.verdict(), note.midi());
      }
      if (note.verdict() == Verdict.RIGHT || note.verdict() == Verdict.WRONG) {
        last = step;
        noteOf[step] = i;
        reached = Math.max(reached, step);
        time(step, note.offMs(), note.timing() != Timing.UNSURE);
      }
    }
    for (ReviewedShift shift : review.shifts()) {
      ShiftMark mark = landings[shift.planned().landingStep()];
      mark.verdict = Optional.of(shift.verdict());
      mark.madeOn = shift.string().map(Object::toString).orElse("");
      mark.lateMs = shift.lateMs().isPresent() ? shift.lateMs().getAsDouble() : null;
    }
    version++;
  }

  private static Ink inkOf(StepVerdict verdict) {
    return switch (verdict) {
      case PLAYED -> Ink.RIGHT;
      case WRONG -> Ink.WRONG;
      case SKIPPED -> Ink.LEFT_OUT;
      case UNPLAYED -> Ink.PALE;
    };
  }

  private void put(int step, Verdict verdict, int midi) {
    switch (verdict) {
      case RIGHT -> ink[step] = Ink.RIGHT;
      case WRONG -> {
        ink[step] = Ink.WRONG;
        heard[step] = heardAs(step, midi);
      }
      case REPEAT -> twice[step] = true;
      case EXTRA -> {
        String name = drill.key().spell(midi).note();
        strays[step] = strays[step].isEmpty() ? "+" + name : strays[step] + " " + name;
      }
    }
  }

  private void time(int step, double offMs, boolean isFine) {
    timed[step] = true;
    fine[step] = isFine;
    offSlots[step] = offMs / 1000 / slotSeconds;
  }

  /** The fret where the hand could have met it on the step's own string, else the note's name. */
  private String heardAs(int step, int midi) {
    Step due = step(step);
    int fret = midi - drill.tuning().openMidi(due.place().string());
    boolean near = Math.abs(fret - due.place().fret()) <= REACH_FRETS;
    return near && fret >= 0 && fret <= drill.frets()
        ? Integer.toString(fret)
        : drill.key().spell(midi).note();
  }

  // ---- what stands there

  /** Changes whenever anything on the page does. */
  public long version() {
    return version;
  }

  public int steps() {
    return ink.length;
  }

  /** Steps in a bar. */
  public int barSteps() {
    return barSteps;
  }

  public int bars() {
    return (ink.length + barSteps - 1) / barSteps;
  }

  public int strings() {
    return drill.tuning().count();
  }

  public Step step(int index) {
    return drill.route().steps().get(index);
  }

  /** The fret of the first finger when a step is played. */
  public int hand(int step) {
    return drill.hand(step);
  }

  public PlayableDrill drill() {
    return drill;
  }

  /** The furthest step heard; -1 before the first, for drawing only. */
  public int reached() {
    return reached;
  }

  /** The step that was reached last, if any was. */
  public Optional<Step> here() {
    return reached < 0 ? Optional.empty() : Optional.of(step(reached));
  }

  /** The ink as it is shown: with marks hidden, played or not is all it tells. */
  public Ink ink(int step) {
    if (marks == Marks.HIDDEN) {
      return step <= reached ? Ink.UNNAMED : Ink.PALE;
    }
    return ink[step];
  }

  /** Whether a step is shown as struck twice. */
  public boolean twice(int step) {
    return marks == Marks.SHOWN && twice[step];
  }

  /** What was heard in place of a step; empty where nothing else was. */
  public String heard(int step) {
    return marks == Marks.SHOWN ? heard[step] : "";
  }

  /** Notes after a step that belong to none; empty where there were none. */
  public String strays(int step) {
    return marks == Marks.SHOWN ? strays[step] : "";
  }

  /** Whether it is shown when a step fell. */
  public boolean timed(int step) {
    return marks == Marks.SHOWN && timed[step];
  }

  /** Whether the time of a step is known finely. */
  public boolean fine(int step) {
    return fine[step];
  }

  /** How far from its slot a step fell, in slots; early is negative. Only where it is timed. */
  public double offSlots(int step) {
    return offSlots[step];
  }

  /** The same in milliseconds. */
  public double offMs(int step) {
    return offSlots[step] * slotSeconds * 1000;
  }

  /** How a timed step lay in time. */
  public Timing timing(int step) {
    return Timing.of(offMs(step), slotSeconds, fine[step]);
  }

  /** The shift that lands on a step, if one does. */
  public Optional<PlannedShift> landing(int step) {
    return landings[step] == null ? Optional.empty() : Optional.of(landings[step].planned);
  }

  /** What became of the shift that lands on a step, as far as it is shown. */
  public Optional<ShiftVerdict> shift(int step) {
    return landings[step] == null || marks == Marks.HIDDEN
        ? Optional.empty()
        : landings[step].verdict;
  }

  /** The string on which that shift was made, where it was another; else empty. */
  public String madeOn(int step) {
    return shift(step).filter(v -> v == ShiftVerdict.MOVED).isPresent()
        ? landings[step].madeOn
        : "";
  }

  /** How late that shift landed, milliseconds, where it is known and shown. */
  public Optional<Double> lateMs(int step) {
    return landings[step] == null || marks == Marks.HIDDEN
        ? Optional.empty()
        : Optional.ofNullable(landings[step].lateMs);
  }

  public boolean goesUp(int step) {
    return landings[step].planned.direction() == Direction.UP;
  }

  /** Index into the review's notes of the note in a step's place, if there is one. */
  public Optional<Integer> note(int step) {
    return noteOf[step] < 0 ? Optional.empty() : Optional.of(noteOf[step]);
  }

  /** Landing steps in the order met. */
  public List<Integer> landingSteps() {
    List<Integer> steps = new ArrayList<>();
    for (int s = 0; s < landings.length; s++) {
      if (landings[s] != null) {
        steps.add(s);
      }
    }
    return steps;
  }

  // ---- the note that is pointed at

  /** The step that is pointed at, if one is. */
  public Optional<Integer> selected() {
    return selected < 0 ? Optional.empty() : Optional.of(selected);
  }

  /** Points at a step; out of bounds becomes the bound. */
  public void select(int step) {
    selected = Math.max(0, Math.min(ink.length - 1, step));
    version++;
  }
}
