package neckway.desk.open;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import neckway.desk.Texts;
import neckway.drill.PlayableDrill;
import neckway.log.DayPlayed;
import neckway.log.RunLog;
import neckway.neck.BadInput;
import neckway.page.PageModel;
import neckway.practice.Plan;
import neckway.practice.PlanItem;
import neckway.practice.Reach;
import neckway.practice.WarmUp;
import neckway.practice.WarmUpPace;

/**
 * Leads through a warm-up, a step at a time, listening where there is an input: a drill goes on
 * when it was played, slower where it was not even; other steps go by the clock. It is kept in the
 * log as a warm-up when it is done, or when it is stopped after a step.
 */
final class WarmUpModel implements WarmUpRun.Told {
  /** So long is one (common practice, no source; as long as the command's). */
  private static final int MINUTES = 8;

  /** A drill begins so long after it was shown: time to read what is to be played, seconds. */
  private static final int READ_SECONDS = 6;

  private static final long NANOS = 1_000_000_000;
  private static final long SECONDS = 60;

  /** Where one is. */
  enum Stage {
    /** None is led. */
    NONE,
    STEP,
    /** It hurt. */
    STOPPED,
    DONE
  }

  /**
   * What is shown.
   *
   * @param number of the step, from 0
   */
  record Shown(Stage stage, Optional<Plan> plan, int number) {
    private static final Shown NOTHING = new Shown(Stage.NONE, Optional.empty(), 0);

    PlanItem item() {
      return plan.orElseThrow().items().get(number);
    }

    int steps() {
      return plan.map(p -> p.items().size()).orElse(0);
    }

    private Shown at(Stage now) {
      return new Shown(now, plan, number);
    }
  }

  private final RunBook book;
  private final WarmUpSound sound;
  private final Executor work;
  private final Executor window;
  private final Consumer<String> say;
  private final ReadOnlyObjectWrapper<Shown> shown =
      new ReadOnlyObjectWrapper<>(this, "shown", Shown.NOTHING);
  private final ReadOnlyStringWrapper count = new ReadOnlyStringWrapper(this, "count", "");
  private final ReadOnlyStringWrapper line = new ReadOnlyStringWrapper(this, "line", "");
  private final ReadOnlyObjectWrapper<Optional<PageModel>> page =
      new ReadOnlyObjectWrapper<>(this, "page", Optional.empty());
  private OffsetDateTime begun = OffsetDateTime.MIN;

  /** Until something stands in the way of it. */
  private boolean hears = true;

  /** Which half of the step's drill is played or comes next. */
  private Optional<PlayableDrill> half = Optional.empty();

  private boolean isSecondHalf;
  private Optional<WarmUpRun> run = Optional.empty();

  /** The run is ended by the player, and nothing follows from it. */
  private boolean leaving;

  private OptionalLong shownNanos = OptionalLong.empty();

  /**
   * @param work where the log is read and written
   * @param window where what was read is shown
   * @param say takes a line for the player
   */
  WarmUpModel(
      RunBook book, WarmUpSound sound, Executor work, Executor window, Consumer<String> say) {
    this.book = book;
    this.sound = sound;
    this.work = work;
    this.window = window;
    this.say = say;
  }

  ReadOnlyObjectProperty<Shown> shown() {
    return shown.getReadOnlyProperty();
  }

  /** The figure of a count-in; empty outside it. */
  ReadOnlyStringProperty count() {
    return count.getReadOnlyProperty();
  }

  /** What happens in the step: the time that is left, that it is heard, or what is amiss. */
  ReadOnlyStringProperty line() {
    return line.getReadOnlyProperty();
  }

  /** What is played, and how far one has come; empty where nothing is. */
  ReadOnlyObjectProperty<Optional<PageModel>> page() {
    return page.getReadOnlyProperty();
  }

  boolean isLed() {
    return shown.get().stage() != Stage.NONE;
  }

  /** Begins one as the day and what is open ask for. */
  void begin(Reach reach) {
    work.execute(
        () -> {
          try {
            Plan plan = new WarmUp(reach, played(reach.today())).plan(MINUTES);
            window.execute(
                () -> {
                  begun = OffsetDateTime.now().truncatedTo(ChronoUnit.SECONDS);
                  hears = true;
                  show(new Shown(Stage.STEP, Optional.of(plan), 0));
                });
          } catch (BadInput e) {
            tell(e.getMessage());
          }
        });
  }

  private WarmUp.Day played(LocalDate today) {
    if (!RunLog.isThere(book.folder())) {
      return new WarmUp.Day(Optional.empty(), 0);
    }
    try (RunLog log = RunLog.open(book.folder(), this::tell)) {
      return DayPlayed.of(log, today, book.player());
    }
  }

  private void tell(String told) {
    window.execute(() -> say.accept(told));
  }

  private void show(Shown next) {
    line.set("");
    shownNanos = OptionalLong.empty();
    isSecondHalf = false;
    half(
        next.stage() == Stage.STEP ? next.item().drill().map(WarmUpPace::first) : Optional.empty());
    shown.set(next);
  }

  private void half(Optional<PlayableDrill> next) {
    half = next;
    page.set(next.map(PageModel::new));
    page.get().ifPresent(p -> p.show(PageModel.Marks.HIDDEN));
  }

  // ---- what the player does

  /** Goes on to the next step; after the last it is done, and after that it is left. */
  void next() {
    leave();
    Shown now = shown.get();
    if (now.stage() != Stage.STEP) {
      show(Shown.NOTHING);
    } else if (now.number() + 1 < now.steps()) {
      show(new Shown(Stage.STEP, now.plan(), now.number() + 1));
    } else {
      show(now.at(Stage.DONE));
      keep();
    }
  }

  /** It hurts: it stops at once. Where none goes on, what is said of it is left. */
  void hurts() {
    leave();
    Shown now = shown.get();
    if (now.stage() != Stage.STEP) {
      show(Shown.NOTHING);
      return;
    }
    show(now.at(Stage.STOPPED));
    if (now.number() > 0) {
      keep();
    }
  }

  /** Another view is in front: what is played is ended, and the step begins again later. */
  void hidden() {
    leave();
    if (shown.get().stage() == Stage.STEP) {
      show(shown.get());
    }
  }

  private void leave() {
    leaving = run.isPresent();
    count.set("");
    run.ifPresent(WarmUpRun::stop);
  }

  private void keep() {
    OffsetDateTime when = begun;
    work.execute(
        () -> {
          try {
            book.keepWarmUp(when, this::tell);
          } catch (BadInput e) {
            tell(e.getMessage());
          }
        });
  }

  // ---- time, and what is heard

  /**
   * Time goes on while the step is in front.
   *
   * @param nowNanos of a clock that never goes back
   */
  void tick(long nowNanos) {
    Shown now = shown.get();
    if (now.stage() != Stage.STEP || run.isPresent()) {
      return;
    }
    if (shownNanos.isEmpty()) {
      shownNanos = OptionalLong.of(nowNanos);
    }
    long seconds = (nowNanos - shownNanos.getAsLong()) / NANOS;
    if (hears && half.isPresent()) {
      if (isSecondHalf || seconds >= READ_SECONDS) {
        play(half.get());
      } else {
        line.set(Texts.of("warmup.soon", READ_SECONDS - seconds));
      }
      return;
    }
    long left = SECONDS * now.item().minutes() - seconds;
    if (left <= 0) {
      next();
    } else {
      line.set(Texts.of("warmup.left", left / SECONDS, String.format("%02d", left % SECONDS)));
    }
  }

  private void play(PlayableDrill drill) {
    line.set(
        drill.pulse().tempo() < shown.get().item().drill().orElseThrow().pulse().tempo()
            ? Texts.of("warmup.slower", Texts.plain(drill.pulse().tempo()))
            : Texts.of("warmup.play"));
    WarmUpRun begins = new WarmUpRun(drill, window, this);
    run = Optional.of(begins);
    begins.begin(sound);
  }

  @Override
  public void count(String figure) {
    if (!leaving) {
      count.set(figure);
    }
  }

  @Override
  public void page(Consumer<PageModel> change) {
    if (!leaving) {
      page.get().ifPresent(change);
    }
  }

  @Override
  public void complaint(String told) {
    if (!leaving) {
      say.accept(told);
    }
  }

  @Override
  public void over(WarmUpRun ended) {
    run = Optional.empty();
    count.set("");
    if (leaving) {
      leaving = false;
      return;
    }
    if (!ended.wasHeard()) {
      // without an input or an output the steps go by the clock
      hears = false;
      shownNanos = OptionalLong.empty();
      return;
    }
    Optional<PlayableDrill> second =
        isSecondHalf
            ? Optional.empty()
            : WarmUpPace.second(shown.get().item().drill().orElseThrow(), ended.spreadMs());
    half(second);
    isSecondHalf = second.isPresent();
    if (second.isEmpty()) {
      next();
    }
  }
}
