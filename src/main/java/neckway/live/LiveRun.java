package neckway.live;

import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import neckway.drill.Pulse;
import neckway.file.RoundTripFile;
import neckway.neck.BadInput;
import neckway.review.Review;
import neckway.sound.Capture;
import neckway.sound.ClickTrack;
import neckway.sound.Devices;
import neckway.sound.OffsetWatch;
import neckway.sound.Playback;

/**
 * A live run, for whoever draws it: one round, or round, rest and the next round on the same
 * running click until it is stopped. Each round has its own take and review.
 */
public final class LiveRun {
  /** Nothing is clicked before this, so that both devices have settled, seconds. */
  public static final double LEAD_SECONDS = 1.5;

  private final LiveSetup setup;
  private final LiveRunListener listener;
  private final BooleanSupplier stopAsked;
  private volatile boolean stopped;

  private LiveRun(LiveSetup setup, LiveRunListener listener, BooleanSupplier stopAsked) {
    this.setup = setup;
    this.listener = listener;
    this.stopAsked = stopAsked;
  }

  /**
   * Runs to its end in the thread that calls it.
   *
   * @param stop asked often, in that thread; true ends the run in good order
   * @throws BadInput for what stands in the way before anything was heard
   */
  public static void run(LiveSetup setup, LiveRunListener listener, BooleanSupplier stop) {
    new LiveRun(setup, listener, stop).run();
  }

  /**
   * Begins one in a thread of its own. What stands in the way is told to the listener as a
   * complaint.
   */
  public static LiveRun start(LiveSetup setup, LiveRunListener listener) {
    LiveRun run = new LiveRun(setup, listener, () -> false);
    Thread thread = new Thread(run::runAndComplain, "live run");
    thread.setDaemon(true);
    thread.start();
    return run;
  }

  /** Ends the run in good order; the round that is being played is reviewed as far as it went. */
  public void stop() {
    stopped = true;
  }

  private boolean isStopped() {
    return stopped || stopAsked.getAsBoolean();
  }

  private void runAndComplain() {
    try {
      devices();
    } catch (BadInput e) {
      listener.complaint(e.getMessage());
    } finally {
      listener.over();
    }
  }

  private void run() {
    try {
      devices();
    } finally {
      listener.over();
    }
  }

  private void devices() {
    try (Capture in = new Capture(Devices.openInput(setup.input()))) {
      Consumer<Capture> rounds =
          switch (setup.start()) {
            case CLICK -> this::toClick;
            case FIRST_NOTE -> this::toFirstNote;
          };
      rounds.accept(in);
    }
  }

  private void toFirstNote(Capture in) {
    in.start();
    round(0, in, 0, new FirstNoteStart(in.sampleRate(), setup.drill().pulse().dueSeconds(0)));
  }

  private void toClick(Capture in) {
    int rate = (int) Math.round(in.sampleRate());
    ClickTrack track = track(rate);
    OptionalDouble extra = extraSeconds(rate);
    LivePlayed sound = new LivePlayed(setup, track, rate);
    try (Playback out = new Playback(Devices.openOutput(setup.output(), rate), sound.all());
        OffsetWatch positions = new OffsetWatch(in, out)) {
      in.start();
      out.start();
      long firstFrame = 0;
      OptionalLong firstClick = OptionalLong.of(0);
      for (int round = 0; firstClick.isPresent(); round++) {
        ClickTrack fromHere = track.from(firstClick.getAsLong());
        int countIn = setup.drill().pulse().countIn();
        sound.countIn(fromHere, countIn);
        ClickStart start = new ClickStart(out, positions, fromHere, countIn, extra, sound.tape());
        Played played = round(round, in, firstFrame, start);
        // where a band covers the next count-in's clicks
        extra = start.extraSeconds();
        double offsetInCapture = start.offsetFrames() + firstFrame;
        firstFrame += played.frames();
        firstClick =
            played.goesOn()
                ? nextRound(track, firstFrame - offsetInCapture, sound.backingEnds())
                : OptionalLong.empty();
      }
    }
  }

  /** The clicks of the drill: its count-in after a lead, then on without end. */
  private ClickTrack track(int sampleRate) {
    Pulse pulse = setup.drill().pulse();
    return new ClickTrack(
        sampleRate,
        LEAD_SECONDS * sampleRate,
        pulse.beatSeconds() * sampleRate,
        pulse.beatsPerBar(),
        pulse.countIn(),
        Long.MAX_VALUE,
        ClickTrack.MAX_GAIN);
  }

  private OptionalDouble extraSeconds(int rate) {
    Optional<RoundTripFile.Pair> known =
        new RoundTripFile()
            .find(Devices.inputName(setup.input()), Devices.outputName(setup.output()), rate);
    return known.isPresent()
        ? OptionalDouble.of(known.get().extraMs() / 1000)
        : OptionalDouble.empty();
  }

  /**
   * What the next round must know of one that is over.
   *
   * @param frames captured in it
   * @param goesOn whether another follows
   */
  private record Played(long frames, boolean goesOn) {}

  private Played round(int number, Capture in, long firstFrame, RoundStart start) {
    Optional<Path> file = setup.takes().map(takes -> takes.files().file(number));
    try (LiveTake take = new LiveTake(in.sampleRate(), file, firstFrame)) {
      LiveRound round = new LiveRound(setup, take, start, listener, file.map(PlayedOut::file));
      listener.roundBegins(number);
      long overflowsBefore = in.overflows();
      long lostBefore = in.lostFrames();
      Review review = round.play(in, this::isStopped);
      Optional<Path> saved = saved(take, review);
      listener.roundEnded(
          new LiveResult(
              number,
              review,
              saved,
              round.clock(),
              in.overflows() - overflowsBefore,
              in.lostFrames() - lostBefore,
              round.lessons(),
              round.played().map(played -> kept(played, saved.isPresent()))));
      boolean played = !review.notes().isEmpty() && !round.failed();
      return new Played(take.frames(), setup.rounds().repeat() && played && !isStopped());
    }
  }

  /** Puts the take in its place, or gives it up; what goes amiss is told in one line. */
  private Optional<Path> saved(LiveTake take, Review review) {
    boolean toldAlready = take.problem().isPresent();
    try {
      if (!isKept(review)) {
        take.drop();
        return Optional.empty();
      }
      Optional<Path> saved = take.keep();
      take.problem().filter(p -> !toldAlready).ifPresent(listener::complaint);
      return saved;
    } catch (BadInput e) {
      listener.complaint(e.getMessage());
      return Optional.empty();
    }
  }

  /** The file of what was played goes with its take. */
  private LiveResult.Backing kept(PlayedOut played, boolean takeIsKept) {
    try (played) {
      if (!takeIsKept) {
        played.drop();
        return new LiveResult.Backing(played.isTakenOut(), Optional.empty());
      }
      return new LiveResult.Backing(played.isTakenOut(), played.keep());
    } catch (BadInput e) {
      listener.complaint(e.getMessage());
      return new LiveResult.Backing(played.isTakenOut(), Optional.empty());
    }
  }

  private boolean isKept(Review review) {
    return setup.takes().isPresent()
        && switch (setup.takes().get().keep()) {
          case ALL -> true;
          case UNLESS_GIVEN_UP -> !review.notes().isEmpty() || !isStopped();
        };
  }

  /**
   * The click with which the next round's count-in begins: a whole number of bars from the first,
   * with the rest and the count-in before the first note; none where its first beat would come when
   * the backing has ended.
   */
  private OptionalLong nextRound(ClickTrack track, double nowInOutput, double backingEnds) {
    Pulse pulse = setup.drill().pulse();
    int bar = pulse.beatsPerBar();
    long rest = Math.max(0, (long) setup.rounds().restBars() * bar - pulse.countIn());
    long now = track.clickBefore(nowInOutput) + 1 + rest;
    long next = (now + bar - 1) / bar * bar;
    return track.clickFrame(next + pulse.countIn()) < backingEnds
        ? OptionalLong.of(next)
        : OptionalLong.empty();
  }
}
