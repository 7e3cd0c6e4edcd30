package neckway.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import neckway.follow.Clock;
import neckway.follow.Grid;
import neckway.follow.NoteVerdict;
import neckway.follow.Review;
import neckway.follow.Run;
import neckway.follow.RunPlan;
import neckway.follow.ShiftSaid;
import neckway.follow.VerdictListener;
import neckway.hear.Ear;
import neckway.hear.HeardNote;
import neckway.hear.NoteListener;
import neckway.neck.BadInput;
import neckway.place.Lesson;
import neckway.sound.Capture;
import neckway.sound.ClickClock;
import neckway.sound.ClickTrack;
import neckway.sound.OffsetWatch;
import neckway.sound.Playback;

/** One live run from the first sample captured to its review. */
final class LiveSession implements VerdictListener {
  /** Nothing is clicked before this, so that both devices have settled, seconds. */
  static final double LEAD_SECONDS = 1.5;

  private static final double SETTLE_SECONDS = 0.7;
  private static final double QUIET_END_SECONDS = 10;
  private static final double LAST_NOTE_RINGS_SECONDS = 1;
  private static final double WAIT_FOR_FIRST_NOTE_SECONDS = 120;
  private static final double DRIFT_SECONDS = 0.020;

  private final RunPlan plan;
  private final PrintWriter show;
  private final PrintWriter err;
  private final Capture in;
  private final LiveTake take;
  private final BooleanSupplier stop;
  private final boolean terminal;

  private Run run;
  private LivePage page;
  private double firstBeat;
  private double reportedAtBegin;
  private double lastNote;
  private boolean lastStepPlayed;
  private ClickClock.Source clockSource = ClickClock.Source.UNMEASURED;

  LiveSession(
      RunPlan plan,
      Capture in,
      LiveTake take,
      PrintWriter show,
      PrintWriter err,
      boolean terminal,
      BooleanSupplier stop) {
    this.plan = plan;
    this.in = in;
    this.take = take;
    this.show = show;
    this.err = err;
    this.terminal = terminal;
    this.stop = stop;
  }

  /** Follows the click, which {@code out} plays, from its count-in on. */
  Review toClick(Playback out, ClickTrack track, OptionalDouble extraSeconds) {
    double rate = in.sampleRate();
    int countIn = plan.pulse().countIn();
    in.start();
    out.start();
    try (OffsetWatch positions = new OffsetWatch(in, out)) {
      while (!over() && !lost(out)) {
        takeIn();
        if (take.seconds() < SETTLE_SECONDS) {
          continue;
        }
        positions.start();
        double reported = positions.offsetFrames().orElse(0);
        if (run == null && take.frames() > track.clickFrame(countIn) + reported + 0.02 * rate) {
          begin(track, reported, extraSeconds);
        }
      }
      double atEnd = positions.offsetFrames().orElse(0);
      if (run == null) {
        begin(track, atEnd, extraSeconds);
      } else if (!in.gone() && !out.gone()) {
        warnOfStumbles(out.underruns(), (atEnd - reportedAtBegin) / rate);
      }
    }
    return finish();
  }

  private boolean lost(Playback out) {
    if (out.gone()) {
      sayGone("output");
      return true;
    }
    return false;
  }

  private void sayGone(String which) {
    if (take.frames() == 0) {
      throw new BadInput(
          "the sound "
              + which
              + " was gone before anything was heard; check the device and start again");
    }
    err.printf(
        Locale.ROOT,
        "neckway: the sound %s is gone; the take up to %.1f s is kept and reviewed;"
            + " check the device%n",
        which,
        take.seconds());
  }

  private void warnOfStumbles(long underruns, double driftSeconds) {
    if (underruns > 0 || Math.abs(driftSeconds) > DRIFT_SECONDS) {
      err.println(
          "neckway: the output stumbled, so the click moved against the input by about "
              + Math.round(Math.abs(driftSeconds) * 1000)
              + " ms; close other programs, and do not trust this run's timing figures");
    }
  }

  private void begin(ClickTrack track, double reported, OptionalDouble extraSeconds) {
    reportedAtBegin = reported;
    int countIn = plan.pulse().countIn();
    ClickClock clock =
        ClickClock.of(
            take.kept(), take.length(), in.sampleRate(), track, countIn, reported, extraSeconds);
    clockSource = clock.source();
    double first = (track.clickFrame(countIn) + clock.offsetFrames()) / in.sampleRate();
    begin(first, clockSource == ClickClock.Source.UNMEASURED ? Clock.UNMEASURED : Clock.MEASURED);
  }

  /** Follows a free start: the first note heard is slot 0. */
  Review toFirstNote() {
    Ear ear = new Ear(in.sampleRate());
    FirstNote first = new FirstNote();
    in.start();
    int heard = 0;
    while (!over()) {
      takeIn();
      if (run == null) {
        ear.process(take.kept(), heard, take.length() - heard, first);
        heard = take.length();
        if (first.time.isPresent()) {
          begin(first.time.getAsDouble(), Clock.MEASURED);
        }
      }
    }
    if (run == null) {
      begin(first.time.orElse(0), Clock.MEASURED);
    }
    return finish();
  }

  private void begin(double first, Clock clock) {
    firstBeat = Math.round(first * 10_000) / 10_000.0;
    lastNote = Math.max(firstBeat, take.seconds());
    var pulse = plan.pulse();
    Grid grid = new Grid(Grid.Source.GIVEN, pulse.tempo(), firstBeat, pulse.gapSeconds());
    page = new LivePage(show, plan, grid, terminal);
    run = new Run(plan, in.sampleRate(), OptionalDouble.of(firstBeat), clock, this);
    feed();
  }

  @Override
  public void decided(NoteVerdict verdict) {
    lastNote = Math.max(lastNote, verdict.note().time());
    if (verdict.inPlace()) {
      lastStepPlayed = verdict.step().getAsInt() == plan.route().steps().size() - 1;
    }
    page.decided(verdict);
  }

  @Override
  public void shifted(ShiftSaid said) {
    page.shifted(said);
  }

  /** What the run taught of the guitar. */
  List<Lesson> lessons() {
    return run == null ? List.of() : run.lessons();
  }

  private void takeIn() {
    boolean any = take.read();
    if (any && run != null) {
      feed();
    }
    if (!any) {
      pause();
    }
  }

  private void feed() {
    run.feed(take.kept(), 0, take.length());
    take.taken();
  }

  private boolean over() {
    if (stop.getAsBoolean()) {
      return true;
    }
    if (take.problem().isPresent()) {
      err.println("neckway: " + take.problem().get() + "; the take up to here is kept");
      return true;
    }
    if (in.gone()) {
      sayGone("input");
      return true;
    }
    if (run == null) {
      return take.seconds() > WAIT_FOR_FIRST_NOTE_SECONDS + firstBeatDue();
    }
    double quiet = take.seconds() - lastNote;
    return quiet > QUIET_END_SECONDS || lastStepPlayed && quiet > LAST_NOTE_RINGS_SECONDS;
  }

  private double firstBeatDue() {
    return LEAD_SECONDS + plan.pulse().countIn() * plan.pulse().beatSeconds();
  }

  private Review finish() {
    while (take.read()) {
      feed();
    }
    page.end();
    return run.finish();
  }

  /** When the first note was due, seconds from the take's first sample. */
  double firstBeat() {
    return firstBeat;
  }

  /** How the click's times are known. */
  ClickClock.Source clockSource() {
    return clockSource;
  }

  /** Waits a little for more sound. */
  static void pause() {
    try {
      Thread.sleep(4);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Keeps the time of the first note heard. */
  private static final class FirstNote implements NoteListener {
    private OptionalDouble time = OptionalDouble.empty();

    @Override
    public void heard(HeardNote note) {
      if (time.isEmpty()) {
        time = OptionalDouble.of(note.time());
      }
    }

    @Override
    public void listenedUntil(double seconds) {
      // only notes matter here
    }
  }
}
