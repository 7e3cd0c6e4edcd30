package neckway.desk.play;

import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import neckway.calls.CalledRun;
import neckway.desk.Texts;
import neckway.desk.open.RunBook;
import neckway.drill.PlayableDrill;
import neckway.file.CallsFile;
import neckway.file.JsonFile;
import neckway.file.ReviewFile;
import neckway.follow.NoteVerdict;
import neckway.hand.ShiftSaid;
import neckway.live.LiveResult;
import neckway.live.LiveRunListener;
import neckway.log.RunKeeper;
import neckway.neck.BadInput;
import neckway.review.Grid;
import neckway.sound.ClickClock;

/**
 * Carries what happens from the engine's thread to the window's. Notes and beats are posted one by
 * one; the level, which comes hundreds of times a second, is only kept. Beside each take its review
 * is written, and the round is kept in the log.
 */
final class RunPost implements LiveRunListener {
  /** A click that comes back louder than this is worth a line, dB of full scale. */
  private static final double LOUD_LEAK_DBFS = -30;

  private static final float FALL = 0.9f;

  private final Consumer<Runnable> post;
  private final AtomicReference<String> checkLine = new AtomicReference<>();
  private Optional<PlayingModel> model = Optional.empty();
  private Optional<PlayableDrill> drill = Optional.empty();
  private Optional<CalledWay> called = Optional.empty();
  private Optional<RunBook> book = Optional.empty();
  private Optional<Path> guitar = Optional.empty();
  private volatile float level;
  private float countInPeak;
  private boolean countingIn = true;
  private volatile CountDownLatch ended = new CountDownLatch(0);

  RunPost(Consumer<Runnable> post) {
    this.post = post;
  }

  /** The same for one run. */
  RunPost forRun(PlayingModel told, PlayableDrill played, Optional<CalledWay> way) {
    called = way;
    model = Optional.of(told);
    drill = Optional.of(played);
    book = Optional.of(told.settings().book());
    guitar = told.settings().guitarFile();
    countInPeak = 0;
    countingIn = true;
    ended = new CountDownLatch(1);
    return this;
  }

  /** The same for a guest's run, which is not the player's and is not kept. */
  RunPost forGuest(PlayingModel told, PlayableDrill played) {
    forRun(told, played, Optional.empty());
    book = Optional.empty();
    return this;
  }

  /** What the sound check reports. */
  void checked(SoundCheck.Report report) {
    level = report.level();
    checkLine.set(report.line());
  }

  /** The sound check's last line, if one came since this was asked. */
  Optional<String> checkLine() {
    return Optional.ofNullable(checkLine.getAndSet(null));
  }

  /** Waits until the run, if one runs, has written everything. */
  boolean awaitOver(long millis) {
    try {
      return ended.await(millis, TimeUnit.MILLISECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }

  float level() {
    return level;
  }

  private void tell(Consumer<PlayingModel> event) {
    model.ifPresent(m -> post.accept(() -> event.accept(m)));
  }

  @Override
  public void roundBegins(int round) {
    countInPeak = 0;
    countingIn = true;
    tell(m -> m.roundBegins(round));
  }

  @Override
  public void begun(Grid grid) {
    tell(m -> m.page().get().begun(grid));
  }

  @Override
  public void beat(long beat) {
    // the last beat of the count-in may already hold an early first note
    countingIn = beat < -1;
    tell(m -> m.beat(beat));
  }

  @Override
  public void sound(double seconds, float peak) {
    level = Math.max(peak, FALL * level);
    if (countingIn) {
      countInPeak = Math.max(countInPeak, peak);
    }
  }

  @Override
  public void decided(NoteVerdict verdict) {
    tell(m -> m.page().get().decided(verdict));
  }

  @Override
  public void unnamed(int attempt, int step) {
    tell(m -> m.page().get().unnamed(attempt, step));
  }

  @Override
  public void shifted(int attempt, ShiftSaid said) {
    tell(m -> m.page().get().shifted(attempt, said));
  }

  @Override
  public void complaint(String line) {
    tell(m -> m.complaint(line));
  }

  @Override
  public void roundEnded(LiveResult heard) {
    Optional<CalledRun> run = called.map(way -> way.run(heard.review()));
    LiveResult result = run.map(r -> heard.with(r.told(heard.review()))).orElse(heard);
    result.take().ifPresent(take -> write(result, run, take));
    keep(result, run);
    double leakDbfs = 20 * Math.log10(countInPeak + 1e-9);
    boolean leaks = result.clock().filter(RunPost::isHeard).isPresent();
    String leak =
        leaks && leakDbfs > LOUD_LEAK_DBFS ? Texts.of("check.leak", Math.round(leakDbfs)) : "";
    run.ifPresent(r -> tell(m -> m.wentAsFar(r.drill())));
    tell(m -> m.roundEnded(result, leak));
  }

  private static boolean isHeard(ClickClock.Source click) {
    return switch (click) {
      case HEARD -> true;
      case STORED, UNMEASURED -> false;
    };
  }

  /** A log that cannot be written costs nobody the review of the run. */
  private void keep(LiveResult result, Optional<CalledRun> run) {
    if (book.isEmpty()) {
      return;
    }
    long millis = Math.round(1000 * result.review().take().seconds());
    OffsetDateTime begun =
        OffsetDateTime.now().minus(millis, ChronoUnit.MILLIS).truncatedTo(ChronoUnit.SECONDS);
    Consumer<String> complaint = line -> tell(m -> m.lesserComplaint(line));
    try {
      book.orElseThrow()
          .keep(
              new RunBook.Ended(
                  result.backing().isPresent() ? RunKeeper.Kind.BACKING : RunKeeper.Kind.PRACTICE,
                  run,
                  drill.orElseThrow(),
                  result.review(),
                  begun,
                  result.take(),
                  guitar),
              complaint);
    } catch (BadInput e) {
      complaint.accept(e.getMessage());
    }
  }

  private void write(LiveResult result, Optional<CalledRun> run, Path take) {
    String name = take.getFileName().toString();
    Path json = take.resolveSibling(name.replaceFirst("\\.wav$", "") + ".json");
    try {
      if (run.isPresent()) {
        JsonFile.write(json, CallsFile.review(result.review(), name, run.get()));
      } else {
        ReviewFile.write(json, result.review(), name, drill.orElseThrow());
      }
    } catch (BadInput e) {
      String line = e.getMessage();
      tell(m -> m.lesserComplaint(line));
    }
  }

  @Override
  public void over() {
    level = 0;
    tell(PlayingModel::over);
    ended.countDown();
  }
}
