package neckway.desk.open;

import java.time.LocalDate;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import neckway.desk.DrillModel;
import neckway.desk.open.OpenMap.Spot;
import neckway.drill.PlayableDrill;
import neckway.neck.BadInput;
import neckway.neck.Key;
import neckway.neck.Neck;
import neckway.practice.Exercise;
import neckway.practice.PlanItem;
import neckway.practice.Progress;
import neckway.practice.Reach;
import neckway.review.Review;

/**
 * What is open, what comes next, and what became of the run that is read. The log is read and
 * written in another thread; everything else happens in the window's.
 */
public final class OpenModel {
  /** What became of a run that is read. */
  public enum Counted {
    /** It was never in the log: a recording, nothing played, or runs are not kept. */
    NOT_KEPT,
    IN_THE_LOG,
    TAKEN_OUT
  }

  private final DrillModel drills;
  private final RunBook book;
  private final Supplier<LocalDate> today;
  private final Executor work;
  private final Executor window;
  private final Consumer<String> say;
  private final Runnable goToPlaying;

  private final ReadOnlyObjectWrapper<Optional<LogReading>> reading =
      new ReadOnlyObjectWrapper<>(this, "reading", Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<Reach>> reach =
      new ReadOnlyObjectWrapper<>(this, "reach", Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<OpenMap>> map =
      new ReadOnlyObjectWrapper<>(this, "map", Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<Spot>> spot =
      new ReadOnlyObjectWrapper<>(this, "spot", Optional.empty());
  private final ReadOnlyObjectWrapper<Sitting> sitting =
      new ReadOnlyObjectWrapper<>(this, "sitting", Sitting.NONE);
  private final ReadOnlyObjectWrapper<Counted> counted =
      new ReadOnlyObjectWrapper<>(this, "counted", Counted.NOT_KEPT);
  private final ReadOnlyBooleanWrapper marked = new ReadOnlyBooleanWrapper(this, "marked");
  private final ReadOnlyObjectWrapper<String> better =
      new ReadOnlyObjectWrapper<>(this, "better", "");

  private final WarmUpModel warmUp;
  private boolean lowOnTop;
  private Optional<Exercise> wanted = Optional.empty();
  private Optional<Key> wantedKey = Optional.empty();
  private Optional<Review> read = Optional.empty();

  /**
   * @param sound what a warm-up is heard with
   * @param work where the log is read and written, one thing after the other
   * @param window where what was read is shown
   * @param say takes a line for the player
   * @param goToPlaying brings the view where one plays to the front
   */
  public OpenModel(
      DrillModel drills,
      RunBook book,
      WarmUpSound sound,
      Supplier<LocalDate> today,
      Executor work,
      Executor window,
      Consumer<String> say,
      Runnable goToPlaying) {
    this.drills = drills;
    this.book = book;
    this.today = today;
    this.work = work;
    this.window = window;
    this.say = say;
    this.goToPlaying = goToPlaying;
    warmUp = new WarmUpModel(book, sound, work, window, say);
  }

  // ---- the log

  /** Reads the log again. */
  public void refresh() {
    Neck neck = drills.drill().neck();
    LocalDate day = today.get();
    work.execute(
        () -> {
          LogReading now = LogReading.of(book, neck.tuning(), neck.frets(), day);
          window.execute(() -> show(now));
        });
  }

  private void show(LogReading now) {
    boolean first = now.logged() && reading.get().filter(before -> !before.logged()).isPresent();
    reading.set(Optional.of(now));
    now.complaint().ifPresent(say);
    Sitting begun = first ? sitting.get().afterFirst() : sitting.get();
    sitting.set(begun.with(now.plan()));
    choose(
        wantedKey
            .or(() -> reach.get().map(Reach::key))
            .flatMap(key -> of(now, key))
            .or(() -> now.keys().stream().findFirst()));
  }

  private static Optional<Reach> of(LogReading now, Key key) {
    return now.keys().stream().filter(r -> r.key().majorTonic() == key.majorTonic()).findFirst();
  }

  private void choose(Optional<Reach> chosen) {
    Optional<Exercise> before = wanted.or(this::exercise);
    reach.set(chosen);
    map.set(chosen.map(r -> OpenMap.of(r, lowOnTop)));
    spot.set(map.get().flatMap(m -> before.flatMap(m::find).or(m::lastPlayed)));
    wanted = Optional.empty();
    wantedKey = Optional.empty();
  }

  /** What the log said last; empty until it was read. */
  public ReadOnlyObjectProperty<Optional<LogReading>> reading() {
    return reading.getReadOnlyProperty();
  }

  // ---- the warm-up

  /** The warm-up that is led, if one is. */
  WarmUpModel warmUp() {
    return warmUp;
  }

  /** Begins a warm-up in the key that is chosen. */
  public void beginWarmUp() {
    reach.get().ifPresent(warmUp::begin);
  }

  // ---- what is open

  /** Of the chosen key. */
  public ReadOnlyObjectProperty<Optional<Reach>> reach() {
    return reach.getReadOnlyProperty();
  }

  /** Its stands and bridges. */
  public ReadOnlyObjectProperty<Optional<OpenMap>> map() {
    return map.getReadOnlyProperty();
  }

  /** What is pointed at. */
  ReadOnlyObjectProperty<Optional<Spot>> spot() {
    return spot.getReadOnlyProperty();
  }

  /** Chooses a key of those in the log. */
  public void key(Key key) {
    reading.get().flatMap(now -> of(now, key)).ifPresent(r -> choose(Optional.of(r)));
  }

  /** Which string is drawn first. */
  void turn(boolean lowStringOnTop) {
    if (lowOnTop != lowStringOnTop) {
      lowOnTop = lowStringOnTop;
      choose(reach.get());
    }
  }

  /** Points at something. */
  void point(Spot at) {
    spot.set(Optional.of(at));
  }

  /** Points at an exercise of a key, as soon as the log was read. */
  public void point(Key key, Exercise exercise) {
    wanted = Optional.of(exercise);
    wantedKey = Optional.of(key);
  }

  /** Points at what is beside or below; at first at the middle bridge. */
  void pointBy(int columnsOn, int rowsOn) {
    map.get()
        .ifPresent(
            m -> {
              Spot first = new Spot(Math.min(1, m.columns().size() - 1), 0);
              point(spot.get().map(s -> m.from(s, columnsOn, rowsOn)).orElse(first));
            });
  }

  /** How far that is what is pointed at. */
  public Optional<Progress> pointed() {
    return map.get().flatMap(m -> spot.get().map(m::at));
  }

  private Optional<Exercise> exercise() {
    return pointed().map(Progress::exercise);
  }

  /** Chooses what is pointed at as the drill, at the tempo that is its next, and goes to play. */
  public void playPointed() {
    Optional<Progress> progress = pointed();
    if (progress.isEmpty() || reach.get().isEmpty()) {
      return;
    }
    try {
      drills.use(Practised.drill(reach.get().get(), progress.get(), drills.drill()));
      goToPlaying.run();
    } catch (BadInput e) {
      say.accept(e.getMessage());
    }
  }

  // ---- what comes next

  /** What is played in this sitting. */
  ReadOnlyObjectProperty<Sitting> sitting() {
    return sitting.getReadOnlyProperty();
  }

  /** The item of the plan that is next, if there is one. */
  public Optional<PlanItem> next() {
    return sitting.get().next();
  }

  /** Takes the next item's drill, tempo and rounds, and goes to play it; whether there is one. */
  public boolean playNext() {
    Optional<PlayableDrill> drill = next().flatMap(PlanItem::drill);
    drill.ifPresent(
        d -> {
          drills.use(d);
          goToPlaying.run();
        });
    return drill.isPresent();
  }

  // ---- the run that is read

  /** A run of this window, or a recording, is read now. */
  public void read(PlayableDrill drill, Review review) {
    read = Optional.of(review);
    sitting.set(sitting.get().played(drill));
    better.set("");
    marked.set(false);
    counted.set(
        book.id(review).isPresent()
            ? Counted.IN_THE_LOG
            : book.knows(review) ? Counted.TAKEN_OUT : Counted.NOT_KEPT);
    if (counted.get() == Counted.IN_THE_LOG) {
      work.execute(() -> compare(drill, review));
    }
    refresh();
  }

  private void compare(PlayableDrill drill, Review review) {
    try {
      String said = LastTime.said(book, drill, review);
      boolean kept = LastTime.isMarked(book, review);
      window.execute(
          () -> {
            if (read.filter(r -> r == review).isPresent()) {
              better.set(said);
              marked.set(kept);
            }
          });
    } catch (BadInput e) {
      window.execute(() -> say.accept(e.getMessage()));
    }
  }

  /** What became of the run that is read. */
  public ReadOnlyObjectProperty<Counted> counted() {
    return counted.getReadOnlyProperty();
  }

  /** Whether its take is marked to be kept. */
  public ReadOnlyBooleanProperty marked() {
    return marked.getReadOnlyProperty();
  }

  /** That it was better than the last time, where a test bears that; else empty. */
  public ReadOnlyObjectProperty<String> better() {
    return better.getReadOnlyProperty();
  }

  /** Takes the run that is read out of the log, or puts it back. */
  public void count(boolean inTheLog) {
    read.filter(r -> counted.get() != Counted.NOT_KEPT)
        .ifPresent(
            review -> {
              counted.set(inTheLog ? Counted.IN_THE_LOG : Counted.TAKEN_OUT);
              write(() -> book.count(review, inTheLog, this::sayLater));
            });
  }

  /** Marks the take of the run that is read, so that it is not cleared, or not any more. */
  public void mark(boolean kept) {
    read.filter(r -> counted.get() == Counted.IN_THE_LOG)
        .ifPresent(
            review -> {
              marked.set(kept);
              write(() -> book.mark(review, kept, this::sayLater));
            });
  }

  private void sayLater(String line) {
    window.execute(() -> say.accept(line));
  }

  private void write(Runnable writing) {
    work.execute(
        () -> {
          try {
            writing.run();
          } catch (BadInput e) {
            sayLater(e.getMessage());
          }
        });
    refresh();
  }
}
