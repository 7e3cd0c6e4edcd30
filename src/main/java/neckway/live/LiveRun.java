package neckway.live;

import java.nio.file.Path;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import neckway.drill.Pulse;
import neckway.file.RoundTripFile;
import neckway.file.sound.WavWriter;
import neckway.neck.BadInput;
import neckway.review.Review;
import neckway.sound.Capture;
import neckway.sound.ClickTrack;
import neckway.sound.Devices;
import neckway.sound.OffsetWatch;
import neckway.sound.Playback;

/**
 * A live run in a thread of its own: count-in, round, rest, and the next round on the same running
 * click, until it is stopped. Each round has its own take and review.
 */
public final class LiveRun {
  private final LiveSetup setup;
  private final LiveRunListener listener;
  private final CountDownLatch ended = new CountDownLatch(1);
  private volatile boolean stop;

  private LiveRun(LiveSetup setup, LiveRunListener listener) {
    this.setup = setup;
    this.listener = listener;
  }

  /** Begins. What stands in the way is told to the listener as a complaint. */
  public static LiveRun start(LiveSetup setup, LiveRunListener listener) {
    LiveRun run = new LiveRun(setup, listener);
    Thread thread = new Thread(run::run, "live run");
    thread.setDaemon(true);
    thread.start();
    return run;
  }

  /** Ends the run in good order; the round that is being played is reviewed as far as it went. */
  public void stop() {
    stop = true;
  }

  /** Waits for the end; false where it has not come in time. */
  public boolean awaitEnd(long seconds) throws InterruptedException {
    return ended.await(seconds, TimeUnit.SECONDS);
  }

  private void run() {
    try {
      rounds();
    } catch (BadInput e) {
      listener.complaint(e.getMessage());
    } finally {
      listener.over();
      ended.countDown();
    }
  }

  private void rounds() {
    try (Capture in = new Capture(Devices.openInput(setup.input()))) {
      rounds(in);
    }
  }

  private void rounds(Capture in) {
    int rate = (int) Math.round(in.sampleRate());
    ClickTrack track = LiveSession.track(setup.drill(), rate, setup.clickGain());
    OptionalDouble extra = extraSeconds(rate);
    try (Playback out = new Playback(Devices.openOutput(setup.output(), rate), track);
        OffsetWatch positions = new OffsetWatch(in, out)) {
      in.start();
      out.start();
      long firstFrame = 0;
      long firstClick = 0;
      for (int round = 0; firstClick >= 0; round++) {
        LiveTakeOf played =
            round(round, in, out, positions, track.from(firstClick), extra, firstFrame);
        firstFrame += played.frames;
        firstClick = played.goesOn() ? nextRound(track, firstFrame - played.offsetInCapture) : -1;
      }
    }
  }

  private OptionalDouble extraSeconds(int rate) {
    Optional<RoundTripFile.Pair> known =
        new RoundTripFile()
            .find(Devices.inputName(setup.input()), Devices.outputName(setup.output()), rate);
    return known.isPresent()
        ? OptionalDouble.of(known.get().extraMs() / 1000)
        : OptionalDouble.empty();
  }

  /** What the loop must know of a round that was played. */
  private final class LiveTakeOf {
    private final long frames;
    private final double offsetInCapture;
    private final boolean played;

    LiveTakeOf(LiveTake take, LiveSession session, Review review) {
      frames = take.frames();
      offsetInCapture = session.offsetFrames() + take.firstFrame();
      played = !review.notes().isEmpty() && !session.failed();
    }

    boolean goesOn() {
      return setup.repeat() && played && !stop;
    }
  }

  private LiveTakeOf round(
      int round,
      Capture in,
      Playback out,
      OffsetWatch positions,
      ClickTrack track,
      OptionalDouble extra,
      long firstFrame) {
    Path file = setup.takes().file(round);
    try (WavWriter writer =
            new WavWriter(file, (int) Math.round(in.sampleRate()), WavWriter.Coding.PCM_16);
        Safekeeping safe = new Safekeeping(writer)) {
      Objects.requireNonNull(safe);
      LiveTake take = new LiveTake(in, Optional.of(writer), firstFrame);
      LiveSession session =
          new LiveSession(setup.drill(), setup.guitar(), in, take, listener, () -> stop);
      listener.roundBegins(round);
      Review review = session.toClick(out, positions, track, extra);
      boolean kept = !review.notes().isEmpty() || !stop;
      Optional<Path> saved = kept ? finished(writer, file) : Optional.empty();
      listener.roundEnded(
          new LiveResult(
              round,
              review,
              saved,
              session.clockSource(),
              in.overflows(),
              in.lostFrames(),
              session.lessons()));
      return new LiveTakeOf(take, session, review);
    }
  }

  private Optional<Path> finished(WavWriter writer, Path file) {
    try {
      writer.finish();
      return Optional.of(file);
    } catch (BadInput e) {
      listener.complaint(e.getMessage());
      return Optional.empty();
    }
  }

  /**
   * The click with which the next round's count-in begins: a whole number of bars from the first,
   * with the rest and the count-in before the first note.
   */
  private long nextRound(ClickTrack track, double nowInOutput) {
    Pulse pulse = setup.drill().pulse();
    int bar = pulse.beatsPerBar();
    long rest = Math.max(0, (long) setup.restBars() * bar - pulse.countIn());
    long now = track.clickBefore(nowInOutput) + 1 + rest;
    return (now + bar - 1) / bar * bar;
  }
}
