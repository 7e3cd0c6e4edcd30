package neckway.live;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.follow.NoteVerdict;
import neckway.hand.ShiftSaid;
import neckway.hear.Ear;
import neckway.hear.HeardNote;
import neckway.hear.NoteListener;
import neckway.neck.BadInput;
import neckway.review.Clock;
import neckway.review.Grid;
import neckway.review.Review;
import neckway.run.Run;
import neckway.run.RunListener;
import neckway.sound.Capture;
import neckway.sound.ClickClock;
import neckway.sound.ClickTrack;
import neckway.sound.OffsetWatch;
import neckway.sound.Playback;
import neckway.string.GuitarProfile;
import neckway.string.Lesson;

/** One live run from the first sample captured to its review. */
public final class LiveSession {
  /** Nothing is clicked before this, so that both devices have settled, seconds. */
  public static final double LEAD_SECONDS = 1.5;

  /** A run ends when nothing was heard for this long, seconds. */
  public static final double QUIET_END_SECONDS = 10;

  private static final double SETTLE_SECONDS = 0.7;
  private static final double LAST_NOTE_RINGS_SECONDS = 1;
  private static final double WAIT_FOR_FIRST_NOTE_SECONDS = 120;
  private static final double DRIFT_SECONDS = 0.020;

  private final PlayableDrill drill;
  private final Optional<GuitarProfile> guitar;
  private final Capture in;
  private final LiveTake take;
  private final LiveListener listener;
  private final BooleanSupplier stop;
  private final RunListener verdicts = new Verdicts();

  private Run run;
  private double firstBeat;
  private double offsetFrames;
  private double reportedAtBegin;
  private double lastNote;
  private long beat = Long.MIN_VALUE;
  private boolean lastStepPlayed;
  private boolean deviceGone;
  private ClickClock.Source clockSource = ClickClock.Source.UNMEASURED;

  /**
   * @param in not started before the first take of it
   * @param listener told what happens, on the thread that runs this
   * @param stop asked often; true ends the run in good order
   */
  public LiveSession(
      PlayableDrill drill,
      Optional<GuitarProfile> guitar,
      Capture in,
      LiveTake take,
      LiveListener listener,
      BooleanSupplier stop) {
    this.drill = drill;
    this.guitar = guitar;
    this.in = in;
    this.take = take;
    this.listener = listener;
    this.stop = stop;
  }

  /** The clicks of a drill: its count-in after a lead, then on without end. */
  public static ClickTrack track(PlayableDrill drill, int sampleRate, double gain) {
    Pulse pulse = drill.pulse();
    return new ClickTrack(
        sampleRate,
        LEAD_SECONDS * sampleRate,
        pulse.beatSeconds() * sampleRate,
        pulse.beatsPerBar(),
        pulse.countIn(),
        Long.MAX_VALUE,
        gain);
  }

  /**
   * Starts both devices and follows the click, which {@code out} plays, from its count-in on.
   *
   * @param extraSeconds the devices' measured round trip, if it was measured
   * @throws BadInput where a device is gone before anything was heard
   */
  public Review toClick(Playback out, ClickTrack track, OptionalDouble extraSeconds) {
    in.start();
    out.start();
    try (OffsetWatch positions = new OffsetWatch(in, out)) {
      return toClick(out, positions, track, extraSeconds);
    }
  }

  /**
   * Follows the click of devices that run.
   *
   * @param track begins with this run's count-in
   */
  Review toClick(
      Playback out, OffsetWatch positions, ClickTrack track, OptionalDouble extraSeconds) {
    double rate = in.sampleRate();
    int countIn = drill.pulse().countIn();
    long underrunsBefore = out.underruns();
    while (!over() && !lost(out)) {
      takeIn();
      if (take.firstFrame() + take.frames() < SETTLE_SECONDS * rate) {
        continue;
      }
      positions.start();
      double reported = positions.offsetFrames().orElse(0) - take.firstFrame();
      if (run == null) {
        offsetFrames = reported;
        if (take.frames() > track.clickFrame(countIn) + reported + 0.02 * rate) {
          begin(track, reported, extraSeconds);
        }
      }
      sayBeat(track, countIn);
    }
    double atEnd = positions.offsetFrames().orElse(0) - take.firstFrame();
    if (run == null) {
      begin(track, atEnd, extraSeconds);
    } else if (!in.gone() && !out.gone()) {
      warnOfStumbles(out.underruns() - underrunsBefore, (atEnd - reportedAtBegin) / rate);
    }
    return finish();
  }

  private void sayBeat(ClickTrack track, int countIn) {
    long now = track.clickBefore(take.frames() - offsetFrames) - countIn;
    if (now > beat && now >= -countIn) {
      beat = now;
      listener.beat(now);
    }
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
    deviceGone = true;
    listener.complaint(
        String.format(
            Locale.ROOT,
            "the sound %s is gone; the take up to %.1f s is kept and reviewed; check the device",
            which,
            take.seconds()));
  }

  private void warnOfStumbles(long underruns, double driftSeconds) {
    if (underruns > 0 || Math.abs(driftSeconds) > DRIFT_SECONDS) {
      listener.complaint(
          "the output stumbled, so the click moved against the input by about "
              + Math.round(Math.abs(driftSeconds) * 1000)
              + " ms; close other programs, and do not trust this run's timing figures");
    }
  }

  private void begin(ClickTrack track, double reported, OptionalDouble extraSeconds) {
    reportedAtBegin = reported;
    int countIn = drill.pulse().countIn();
    ClickClock clock =
        ClickClock.of(
            take.kept(), take.length(), in.sampleRate(), track, countIn, reported, extraSeconds);
    clockSource = clock.source();
    offsetFrames = clock.offsetFrames();
    double first = (track.clickFrame(countIn) + offsetFrames) / in.sampleRate();
    begin(first, clockSource == ClickClock.Source.UNMEASURED ? Clock.UNMEASURED : Clock.MEASURED);
  }

  /** Follows a free start: the first note heard is slot 0. */
  public Review toFirstNote() {
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
    Pulse pulse = drill.pulse();
    Grid grid = new Grid(Grid.Source.GIVEN, pulse.tempo(), firstBeat, pulse.slotSeconds());
    listener.begun(grid);
    run = new Run(drill, guitar, in.sampleRate(), OptionalDouble.of(firstBeat), clock, verdicts);
    feed();
  }

  /** What the run taught of the guitar. */
  public List<Lesson> lessons() {
    return run == null ? List.of() : run.lessons();
  }

  private void takeIn() {
    boolean any = take.read();
    if (any && run != null) {
      feed();
    }
    if (any) {
      listener.sound(take.seconds(), take.peak());
    } else {
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
      deviceGone = true;
      listener.complaint(take.problem().get() + "; the take up to here is kept");
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
    return LEAD_SECONDS + drill.pulse().countIn() * drill.pulse().beatSeconds();
  }

  private Review finish() {
    while (take.read()) {
      feed();
    }
    return run.finish();
  }

  /** When the first note was due, seconds from the take's first sample. */
  public double firstBeat() {
    return firstBeat;
  }

  /** How the click's times are known. */
  public ClickClock.Source clockSource() {
    return clockSource;
  }

  /** Whether the route was played to its last step. */
  boolean lastStepPlayed() {
    return lastStepPlayed;
  }

  /** Whether the run ended since a device or the disk failed. */
  boolean failed() {
    return deviceGone;
  }

  /** Take frame less output frame. */
  double offsetFrames() {
    return offsetFrames;
  }

  /** Waits a little for more sound. */
  public static void pause() {
    try {
      Thread.sleep(4);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Keeps what tells when the run is over, and passes all on. */
  private final class Verdicts implements RunListener {
    @Override
    public void decided(NoteVerdict verdict) {
      lastNote = Math.max(lastNote, verdict.note().time());
      if (verdict.inPlace()) {
        lastStepPlayed = verdict.step().getAsInt() == drill.route().steps().size() - 1;
      }
      listener.decided(verdict);
    }

    @Override
    public void unnamed(int attempt, int step) {
      listener.unnamed(attempt, step);
    }

    @Override
    public void shifted(int attempt, ShiftSaid said) {
      listener.shifted(attempt, said);
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
