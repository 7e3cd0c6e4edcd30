package neckway.desk.open;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import neckway.log.DayPlayed;
import neckway.log.RunLog;
import neckway.neck.BadInput;
import neckway.practice.Plan;
import neckway.practice.PlanItem;
import neckway.practice.Reach;
import neckway.practice.WarmUp;

/**
 * Leads through a warm-up, a step at a time. It is not listened to, and is kept in the log as a
 * warm-up when it is done, or when it is stopped after a step.
 */
final class WarmUpModel {
  /** So long is one (common practice, no source; as long as the command's). */
  private static final int MINUTES = 8;

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
  private final Executor work;
  private final Executor window;
  private final Consumer<String> say;
  private final ReadOnlyObjectWrapper<Shown> shown =
      new ReadOnlyObjectWrapper<>(this, "shown", Shown.NOTHING);
  private OffsetDateTime begun = OffsetDateTime.MIN;

  /**
   * @param work where the log is read and written
   * @param window where what was read is shown
   * @param say takes a line for the player
   */
  WarmUpModel(RunBook book, Executor work, Executor window, Consumer<String> say) {
    this.book = book;
    this.work = work;
    this.window = window;
    this.say = say;
  }

  ReadOnlyObjectProperty<Shown> shown() {
    return shown.getReadOnlyProperty();
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
                  shown.set(new Shown(Stage.STEP, Optional.of(plan), 0));
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

  private void tell(String line) {
    window.execute(() -> say.accept(line));
  }

  /** Goes on to the next step; after the last it is done, and after that it is left. */
  void next() {
    Shown now = shown.get();
    if (now.stage() != Stage.STEP) {
      shown.set(Shown.NOTHING);
    } else if (now.number() + 1 < now.steps()) {
      shown.set(new Shown(Stage.STEP, now.plan(), now.number() + 1));
    } else {
      shown.set(now.at(Stage.DONE));
      keep();
    }
  }

  /** It hurts: it stops at once. Where none goes on, what is said of it is left. */
  void hurts() {
    Shown now = shown.get();
    if (now.stage() != Stage.STEP) {
      shown.set(Shown.NOTHING);
      return;
    }
    shown.set(now.at(Stage.STOPPED));
    if (now.number() > 0) {
      keep();
    }
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
}
