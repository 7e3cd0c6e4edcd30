package neckway.desk.sound;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import neckway.calibration.Calibrated;
import neckway.desk.play.LevelWatch;
import neckway.desk.play.LevelWatch.Finding;
import neckway.neck.BadInput;

/**
 * What the sound room hears, on the listening's thread: level, tone, and the guided plucks. It
 * hands the window the newest of it, never a queue.
 */
final class RoomEar implements SoundDevices.Taker {
  /**
   * Heard just now.
   *
   * @param meter 0 to 1
   * @param finding what is off; empty: no device gives sound
   * @param loudestDbfs the loudest of the last seconds
   * @param toneHz the steady tone
   * @param trouble why nothing comes in; empty: it does
   * @param guide how far the plucks are
   * @param learnt the guitar, once all is plucked
   * @param refused why it could not be learnt; empty where it could
   * @param wishes how many of the player's wishes were granted before
   */
  record Heard(
      float meter,
      Optional<Finding> finding,
      double loudestDbfs,
      OptionalDouble toneHz,
      String trouble,
      Optional<PluckGuide.State> guide,
      Optional<Calibrated> learnt,
      String refused,
      int wishes) {
    private Heard withoutGuide() {
      return new Heard(
          meter,
          finding,
          loudestDbfs,
          toneHz,
          trouble,
          Optional.empty(),
          Optional.empty(),
          "",
          wishes);
    }
  }

  private static final double REPORT_SECONDS = 0.03;

  private final Executor window;
  private final Consumer<Heard> taker;
  private final Queue<Runnable> wishes = new ConcurrentLinkedQueue<>();
  private final AtomicInteger asked = new AtomicInteger();
  private final AtomicReference<Heard> newest = new AtomicReference<>();

  private Optional<LevelWatch> watch = Optional.empty();
  private double sampleRate;
  private long sinceReport;
  private String trouble = "";
  private Optional<PluckGuide> guide = Optional.empty();
  private Optional<Calibrated> learnt = Optional.empty();
  private String refused = "";
  private boolean tried;
  private int granted;

  RoomEar(Executor window, Consumer<Heard> taker) {
    this.window = window;
    this.taker = taker;
  }

  /** Leads through these plucks from now on. From any thread. */
  void lead(PluckGuide plucks) {
    wish(
        () -> {
          guide = Optional.of(plucks);
          resume();
        });
  }

  /** Does something with the plucks; on the listening's thread, asked for from any. */
  void withGuide(Consumer<PluckGuide> change) {
    wish(
        () ->
            guide.ifPresent(
                plucks -> {
                  change.accept(plucks);
                  if (tried) {
                    resume();
                  }
                }));
  }

  /** Leads through no plucks. */
  void leave() {
    wish(
        () -> {
          guide = Optional.empty();
          learnt = Optional.empty();
          refused = "";
        });
  }

  private void wish(Runnable wish) {
    asked.incrementAndGet();
    wishes.add(wish);
  }

  private void resume() {
    tried = false;
    learnt = Optional.empty();
    refused = "";
    if (watch.isPresent()) {
      guide.ifPresent(plucks -> plucks.begin(sampleRate));
    }
  }

  private void grant() {
    for (Runnable wish = wishes.poll(); wish != null; wish = wishes.poll()) {
      wish.run();
      granted++;
    }
  }

  @Override
  public void opened(double rate) {
    sampleRate = rate;
    watch = Optional.of(new LevelWatch(rate));
    trouble = "";
    if (!tried) {
      resume();
    }
    grant();
  }

  @Override
  public void sound(float[] samples, int length) {
    grant();
    watch.ifPresent(w -> w.feed(samples, length));
    boolean news = guide.isPresent() && !tried && guide.get().feed(samples, length);
    if (guide.isPresent() && !tried && guide.get().ready()) {
      learn(guide.get());
      news = true;
    }
    sinceReport += length;
    if (news || sinceReport > REPORT_SECONDS * sampleRate) {
      report();
    }
  }

  private void learn(PluckGuide plucks) {
    tried = true;
    try {
      learnt = Optional.of(plucks.learn());
    } catch (BadInput e) {
      refused = e.getMessage();
    }
  }

  @Override
  public void trouble(String line) {
    grant();
    trouble = line;
    watch = Optional.empty();
    guide.ifPresent(PluckGuide::pause);
    report();
  }

  private void report() {
    sinceReport = 0;
    Heard heard =
        new Heard(
            watch.map(LevelWatch::meter).orElse(0f),
            watch.map(LevelWatch::finding),
            watch.map(LevelWatch::loudestDbfs).orElse(Double.NEGATIVE_INFINITY),
            watch.map(LevelWatch::toneHz).orElse(OptionalDouble.empty()),
            trouble,
            guide.map(PluckGuide::state),
            learnt,
            refused,
            granted);
    if (newest.getAndSet(heard) == null) {
      window.execute(
          () -> {
            Heard now = newest.getAndSet(null);
            if (now != null) {
              // what was heard before the player's last wish says nothing of it
              taker.accept(now.wishes == asked.get() ? now : now.withoutGuide());
            }
          });
    }
  }
}
