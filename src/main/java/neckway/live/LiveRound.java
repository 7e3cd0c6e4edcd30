package neckway.live;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import neckway.drill.PlayableDrill;
import neckway.follow.NoteVerdict;
import neckway.hand.ShiftSaid;
import neckway.neck.BadInput;
import neckway.review.Grid;
import neckway.review.Review;
import neckway.run.Run;
import neckway.run.RunListener;
import neckway.sound.Capture;
import neckway.sound.ClickClock;
import neckway.sound.Pump;
import neckway.string.GuitarProfile;
import neckway.string.Lesson;
import neckway.words.Wording;

/** One round of a live run, from its first sample to its review. */
final class LiveRound {
  private final PlayableDrill drill;
  private final Optional<GuitarProfile> guitar;
  private final LiveTake take;
  private final RoundStart start;
  private final RoundEnd end;
  private final LiveRunListener listener;
  private final Optional<Path> playedFile;

  private Optional<Run> run = Optional.empty();
  private Optional<PlayedOut> played = Optional.empty();
  private Optional<ClickClock.Source> clock = Optional.empty();
  private boolean failed;

  /**
   * @param take empty
   * @param listener told what happens, on the thread that plays this
   * @param playedFile where what is played out is kept, if it is
   */
  LiveRound(
      LiveSetup setup,
      LiveTake take,
      RoundStart start,
      LiveRunListener listener,
      Optional<Path> playedFile) {
    this.playedFile = playedFile;
    this.drill = setup.drill();
    this.guitar = setup.guitar();
    this.take = take;
    this.start = start;
    this.listener = listener;
    end = new RoundEnd(drill, setup.backing().isPresent());
  }

  /**
   * Follows what comes in until the round is over.
   *
   * @param in started
   * @param stop asked often; true ends the round in good order
   * @throws BadInput where a device is gone before anything was heard
   */
  Review play(Capture in, BooleanSupplier stop) {
    Pump.End why = Pump.run(in, this::hear, () -> stop.getAsBoolean() || start.outputGone());
    Optional<String> failure =
        switch (why) {
          case GONE -> Optional.of(gone("input"));
          case STOPPED ->
              stop.getAsBoolean() || !start.outputGone()
                  ? Optional.empty()
                  : Optional.of(gone("output"));
          case ENOUGH -> take.problem().map(p -> Wording.of("machine.live.kept", p));
        };
    failed = failure.isPresent();
    failure.ifPresent(listener::complaint);
    if (run.isEmpty()) {
      begin(start.atEnd(take));
    } else if (why != Pump.End.GONE && !start.outputGone()) {
      start.doubt(take).ifPresent(listener::complaint);
    }
    Pump.rest(in, this::hearLast);
    Run whole = run.orElseThrow();
    played.ifPresent(p -> p.finish(whole));
    return whole.finish();
  }

  private boolean hear(float[] samples, int length) {
    if (!take.add(samples, length)) {
      return false;
    }
    if (run.isEmpty()) {
      start.find(take).ifPresent(this::begin);
    } else {
      feed();
    }
    listener.sound(take.seconds(), take.peak());
    start.heard(take, listener);
    return !end.reached(take.seconds());
  }

  private boolean hearLast(float[] samples, int length) {
    boolean taken = take.add(samples, length);
    feed();
    return taken;
  }

  private void begin(FirstBeat first) {
    clock = first.source();
    end.begun(first, take.seconds());
    listener.begun(Grid.of(Grid.Source.GIVEN, drill.pulse(), first.seconds()));
    run =
        Optional.of(
            new Run(
                drill,
                guitar,
                take.sampleRate(),
                OptionalDouble.of(first.seconds()),
                first.clock(),
                new Verdicts()));
    played = start.played().map(known -> new PlayedOut(take.sampleRate(), known, playedFile));
    played.ifPresent(p -> p.begin(take.kept(), take.length(), first.seconds()));
    feed();
  }

  private void feed() {
    Run to = run.orElseThrow();
    played.ifPresentOrElse(
        p -> p.feed(take.kept(), take.length(), to), () -> to.feed(take.kept(), 0, take.length()));
    take.taken();
  }

  /**
   * @param which input or output
   */
  private String gone(String which) {
    if (take.frames() == 0) {
      throw new BadInput(Wording.of("machine.live.gone." + which));
    }
    return Wording.of("machine.live.lost." + which, Wording.fixed(take.seconds(), 0));
  }

  /** Whether it ended since a device or the disk failed. */
  boolean failed() {
    return failed;
  }

  /** How the click's times are known; empty where nothing clicks. */
  Optional<ClickClock.Source> clock() {
    return clock;
  }

  /** What was played out and taken out of what was heard; empty where only the click was. */
  Optional<PlayedOut> played() {
    return played;
  }

  /** What it taught of the guitar. */
  List<Lesson> lessons() {
    return run.map(Run::lessons).orElse(List.of());
  }

  /** Keeps what tells when the round is over, and passes all on. */
  private final class Verdicts implements RunListener {
    @Override
    public void decided(NoteVerdict verdict) {
      end.heard(verdict);
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
}
