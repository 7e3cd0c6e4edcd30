package neckway.desk.play;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.function.Consumer;
import java.util.function.DoubleSupplier;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import neckway.desk.DrillModel;
import neckway.desk.Texts;
import neckway.desk.read.ReadTake;
import neckway.drill.PlayableDrill;
import neckway.live.LiveResult;
import neckway.live.LiveSetup;
import neckway.neck.BadInput;
import neckway.page.PageModel;
import neckway.review.Review;
import neckway.string.GuitarProfile;

/**
 * A run from the sound check to its review, all with one key. Everything but what the engine's
 * thread posts happens on one thread, which calls {@link #frame()} once a frame.
 */
public final class PlayingModel {
  /** Where a run is. */
  public enum State {
    /** Nothing runs; the sound is checked. */
    READY,
    /** The devices are being opened. */
    OPENING,
    COUNT_IN,
    PLAYING,
    /** Between two rounds. */
    REST,
    /** The player is asked how many were right. */
    GUESSING
  }

  private static final int MOST_GUESS = 9999;
  private static final int REST_BARS = 1;
  private static final long CLOSE_MILLIS = 3_000;

  private final DrillModel drills;
  private final RunSettings settings;
  private final DoubleSupplier clickGain;
  private final Engine engine;

  /** Plays in the player's place; empty where nobody does. */
  private Optional<Engine> guest = Optional.empty();

  private boolean guestPlays;
  private final SoundCheck check;
  private final Consumer<List<ReadTake>> reading;
  private final Queue<Runnable> events = new ConcurrentLinkedQueue<>();
  private final RunPost post = new RunPost(events::add);

  private final ReadOnlyObjectWrapper<State> state =
      new ReadOnlyObjectWrapper<>(this, "state", State.READY);
  private final ReadOnlyObjectWrapper<PageModel> page = new ReadOnlyObjectWrapper<>(this, "page");
  private final ReadOnlyStringWrapper count = new ReadOnlyStringWrapper(this, "count", "");
  private final ReadOnlyStringWrapper line = new ReadOnlyStringWrapper(this, "line", "");
  private final ReadOnlyStringWrapper said = new ReadOnlyStringWrapper(this, "said", "");
  private final ReadOnlyStringWrapper sounds = new ReadOnlyStringWrapper(this, "sounds", "");
  private final ReadOnlyStringWrapper guess = new ReadOnlyStringWrapper(this, "guess", "");
  private final ReadOnlyDoubleWrapper level = new ReadOnlyDoubleWrapper(this, "level", 0);
  private final ReadOnlyObjectWrapper<OptionalLong> beat =
      new ReadOnlyObjectWrapper<>(this, "beat", OptionalLong.empty());
  private final ReadOnlyIntegerWrapper round = new ReadOnlyIntegerWrapper(this, "round", 0);

  private final ReadOnlyStringWrapper call = new ReadOnlyStringWrapper(this, "call", "");

  private PlayableDrill drill;

  /** What is called in the run; empty where nothing is. */
  private Optional<CalledWay> called = Optional.empty();

  private Runnable stop = () -> {};
  private boolean stopAsked;
  private boolean checking;
  private boolean inFront;
  private boolean beginWhenShown;
  private String complaint = "";
  private Optional<LiveResult> last = Optional.empty();
  private final List<ReadTake> rounds = new ArrayList<>();

  /**
   * @param clickGain how loud the click is, share of full scale; asked on any thread
   * @param reading told the rounds to be read when a run is over, in order, at least one
   */
  public PlayingModel(
      DrillModel drills,
      RunSettings settings,
      DoubleSupplier clickGain,
      Engine engine,
      SoundCheck check,
      Consumer<List<ReadTake>> reading) {
    this.drills = drills;
    this.settings = settings;
    this.clickGain = clickGain;
    this.engine = engine;
    this.check = check;
    this.reading = reading;
    fresh();
    drills
        .drillProperty()
        .addListener(
            o -> {
              if (state.get() == State.READY) {
                fresh();
              }
            });
    settings.liveMarks().addListener(o -> page.get().show(marks()));
  }

  private void fresh() {
    called = Optional.empty();
    call.set("");
    drill = drills.drill();
    newPage();
    said.set("");
  }

  private void newPage() {
    PageModel next = new PageModel(drill);
    next.show(marks());
    page.set(next);
  }

  private PageModel.Marks marks() {
    return settings.liveMarks().get() ? PageModel.Marks.SHOWN : PageModel.Marks.HIDDEN;
  }

  // ---- what the player does

  /** The view has come to the front. */
  public void shown() {
    inFront = true;
    if (beginWhenShown && state.get() == State.GUESSING) {
      state.set(State.READY);
      read(OptionalInt.empty());
    }
    if (state.get() != State.READY) {
      return;
    }
    fresh();
    if (beginWhenShown) {
      beginWaiting();
    } else {
      listen();
    }
  }

  private void beginWaiting() {
    beginWhenShown = false;
    begin();
  }

  /** Whether a run begins as soon as the one that ends is over. */
  public boolean beginsNext() {
    return inFront && beginWhenShown;
  }

  /**
   * When the view next comes to the front, a run begins: at once, or where one still ends, as soon
   * as that is over. Escape, and leaving the view before, drop it.
   */
  public void beginWhenShown() {
    beginWhenShown = true;
  }

  /** The view has gone: what runs ends in good order. */
  public void hidden() {
    inFront = false;
    beginWhenShown = false;
    stopCheck(() -> {});
    settings.backing().recording().hush();
    askStop();
  }

  /**
   * The window closes: a run is ended and its take put in its place, unless that takes too long;
   * then the next start finds it.
   */
  public boolean close() {
    beginWhenShown = false;
    settings.backing().recording().hush();
    askStop();
    frame();
    return post.awaitOver(CLOSE_MILLIS);
  }

  /** The one key: begins, stops, begins again; in a guess it is the answer. */
  public void press() {
    Runnable asked =
        switch (state.get()) {
          case READY -> this::begin;
          case GUESSING -> this::answer;
          case OPENING, COUNT_IN, PLAYING, REST -> this::askStop;
        };
    asked.run();
  }

  /** Stops; a question is left without an answer. */
  public void escape() {
    beginWhenShown = false;
    if (state.get() == State.GUESSING) {
      guess.set("");
      answer();
    } else {
      askStop();
    }
  }

  /** A figure of the guess. */
  public void digit(int digit) {
    if (state.get() == State.GUESSING && Integer.parseInt("0" + guess.get()) * 10 < MOST_GUESS) {
      guess.set(guess.get() + digit);
    }
  }

  /** Takes the last figure of the guess back. */
  public void backspace() {
    if (!guess.get().isEmpty()) {
      guess.set(guess.get().substring(0, guess.get().length() - 1));
    }
  }

  /** Says who plays in the player's place. */
  public void guest(Engine player) {
    guest = Optional.of(player);
  }

  /** Whether it was a guest who played what was played last. */
  public boolean guestPlayed() {
    return guestPlays;
  }

  /** Nothing of the run before is left. */
  private void forget() {
    settings.backing().recording().hush();
    fresh();
    complaint = "";
    line.set("");
    last = Optional.empty();
    rounds.clear();
    stopAsked = false;
  }

  /** The guest plays the drill once, and nothing of it is kept. */
  public void beginGuest() {
    if (state.get() == State.READY && guest.isPresent()) {
      forget();
      guestPlays = true;
      newPage();
      state.set(State.OPENING);
      LiveSetup setup =
          new LiveSetup(
              drill,
              Optional.empty(),
              Optional.empty(),
              settings.output(),
              LiveSetup.Start.CLICK,
              clickGain,
              LiveSetup.Rounds.ONE,
              Optional.empty());
      RunPost listener = post.forGuest(this, drill);
      stopCheck(
          () -> {
            Runnable stopper = guest.orElseThrow().start(setup, listener);
            events.add(() -> started(stopper));
          });
    }
  }

  /** Begins a run of the drill as it is chosen now. */
  public void begin() {
    if (state.get() != State.READY) {
      return;
    }
    guestPlays = false;
    forget();
    Optional<GuitarProfile> guitar = Optional.empty();
    try {
      settings.takeInLessons();
      guitar = settings.guitar(drill);
    } catch (BadInput e) {
      complaint(e.getMessage());
    }
    boolean backed = settings.backing().plays().get();
    LocalDateTime now;
    try {
      if (backed) {
        drill = settings.backing().inTempo(drill);
      } else if (settings.calls().calls().get()) {
        called = Optional.of(settings.called(drill, this::complaint));
        drill = called.get().drill();
      }
      now = settings.freeTime(drill, LocalDateTime.now());
    } catch (BadInput e) {
      complaint(e.getMessage());
      return;
    }
    PlayableDrill played = drill;
    newPage();
    state.set(State.OPENING);
    sounds.set(backed ? settings.backing().said(drills.drill(), played) : "");
    boolean repeat = settings.repeat().get() && !settings.guessFirst().get() && called.isEmpty();
    LiveSetup setup =
        new LiveSetup(
            drill,
            guitar,
            settings.input(),
            settings.output(),
            LiveSetup.Start.CLICK,
            clickGain,
            new LiveSetup.Rounds(repeat, REST_BARS),
            Optional.of(
                new LiveSetup.Takes(
                    r -> settings.takeFile(played, now, r), LiveSetup.Keep.UNLESS_GIVEN_UP)),
            Optional.empty(),
            settings.calls().tones().get());
    RunPost listener = post.forRun(this, played, called);
    if (!backed) {
      stopCheck(() -> start(setup, listener));
      return;
    }
    stopCheck(
        () ->
            settings
                .backing()
                .make(
                    played,
                    made -> start(setup.with(made), listener),
                    why -> {
                      listener.complaint(why);
                      listener.over();
                    }));
  }

  private void start(LiveSetup setup, RunPost listener) {
    Runnable stopper = engine.start(setup, listener);
    events.add(() -> started(stopper));
  }

  private void started(Runnable stopper) {
    stop = stopper;
    if (stopAsked) {
      stop.run();
    }
  }

  private void askStop() {
    if (state.get() != State.READY && state.get() != State.GUESSING) {
      stopAsked = true;
      stop.run();
    }
  }

  private void listen() {
    checking = true;
    check.start(settings.input(), post::checked);
  }

  private void stopCheck(Runnable then) {
    checking = false;
    check.stop(then);
  }

  // ---- what happens, in the frame after it did

  /** Takes what was posted since the last frame. */
  public void frame() {
    for (Runnable event = events.poll(); event != null; event = events.poll()) {
      event.run();
    }
    settings.backing().recording().frame();
    level.set(post.level());
    if (checking && state.get() == State.READY) {
      post.checkLine().ifPresent(off -> line.set(off.isEmpty() ? complaint : off));
    }
  }

  void roundBegins(int now) {
    round.set(now);
    if (now > 0) {
      state.set(State.REST);
    }
  }

  void beat(long beat) {
    this.beat.set(OptionalLong.of(beat));
    int countIn = drill.pulse().countIn();
    if (beat < 0) {
      if (state.get() != State.COUNT_IN) {
        state.set(State.COUNT_IN);
        page.get().clear();
        page.get().show(marks());
        said.set("");
      }
      count.set(Long.toString(countIn + beat + 1));
    } else if (state.get() != State.PLAYING) {
      count.set("");
      state.set(State.PLAYING);
    }
    called.ifPresent(
        way -> {
          call.set(way.words(beat));
          page.get().know(way.knownSteps(beat));
        });
  }

  void complaint(String told) {
    complaint = told;
    line.set(told);
  }

  /** What follows from something that was told already, such as a full disk, is not told again. */
  void lesserComplaint(String told) {
    if (complaint.isEmpty()) {
      complaint(told);
    }
  }

  /** A called run is read as far as it was played. */
  void wentAsFar(PlayableDrill called) {
    drill = called;
    newPage();
  }

  void roundEnded(LiveResult result, String leak) {
    count.set("");
    call.set("");
    if (!leak.isEmpty() && line.get().isEmpty()) {
      complaint(leak);
    }
    result.soundMissed().ifPresent(this::lesserComplaint);
    if (last.isPresent() && !played(result.review())) {
      return;
    }
    last = Optional.of(result);
    if (!result.review().notes().isEmpty()) {
      rounds.add(ReadTake.played(drill, result.review(), result.take(), OptionalInt.empty()));
    }
    try {
      settings.keep(result.lessons());
    } catch (BadInput e) {
      lesserComplaint(e.getMessage());
    }
    if (result.review().notes().isEmpty()) {
      // nothing was played: what stands there is still to come
      page.get().clear();
    } else {
      page.get().review(result.review());
    }
    if (!settings.guessFirst().get()) {
      page.get().show(PageModel.Marks.SHOWN);
      said.set(result.review().summary().words().stream().findFirst().orElse(""));
    }
  }

  /** Whether anything was played in a round, not only sounded in the rest before it. */
  private static boolean played(Review review) {
    double from = review.grid().due(0) - review.grid().slotSeconds();
    return review.notes().stream().anyMatch(note -> note.time() >= from);
  }

  void over() {
    stop = () -> {};
    sounds.set("");
    count.set("");
    boolean heard = last.filter(r -> !r.review().notes().isEmpty()).isPresent();
    if (heard && settings.guessFirst().get() && called.isEmpty() && !beginsNext() && !guestPlays) {
      guess.set("");
      state.set(State.GUESSING);
      return;
    }
    state.set(State.READY);
    if (heard) {
      read(OptionalInt.empty());
    }
    if (beginsNext()) {
      beginWaiting();
    } else if (!heard) {
      if (line.get().isEmpty() && last.isPresent() && !stopAsked) {
        complaint(Texts.of("play.nothing"));
      }
      if (inFront) {
        // else the input is another view's
        listen();
      }
    }
  }

  private void answer() {
    state.set(State.READY);
    read(
        guess.get().isEmpty()
            ? OptionalInt.empty()
            : OptionalInt.of(Integer.parseInt(guess.get())));
  }

  private void read(OptionalInt guessed) {
    LiveResult result = last.orElseThrow();
    Optional<Path> take = result.take();
    rounds.set(rounds.size() - 1, ReadTake.played(drill, result.review(), take, guessed));
    reading.accept(List.copyOf(rounds));
  }

  // ---- what is shown

  public ReadOnlyObjectProperty<State> state() {
    return state.getReadOnlyProperty();
  }

  /** The page that fills in. */
  public ReadOnlyObjectProperty<PageModel> page() {
    return page.getReadOnlyProperty();
  }

  /** The count-in's figure; empty outside it. */
  public ReadOnlyStringProperty count() {
    return count.getReadOnlyProperty();
  }

  /** What was called last: where to go next; empty where nothing is called. */
  public ReadOnlyStringProperty call() {
    return call.getReadOnlyProperty();
  }

  /** One line about what is off; empty where nothing is. */
  public ReadOnlyStringProperty line() {
    return line.getReadOnlyProperty();
  }

  /** What went amiss in the run that was last begun; empty where nothing did. */
  public String complaint() {
    return complaint;
  }

  /** What is said of the round that is over, while the next one waits. */
  public ReadOnlyStringProperty said() {
    return said.getReadOnlyProperty();
  }

  /** The backing that sounds, in one line; empty where none does. */
  public ReadOnlyStringProperty sounds() {
    return sounds.getReadOnlyProperty();
  }

  /** The guess as typed. */
  public ReadOnlyStringProperty guess() {
    return guess.getReadOnlyProperty();
  }

  /** What comes in, 0 to 1. */
  public ReadOnlyDoubleProperty level() {
    return level.getReadOnlyProperty();
  }

  /** The beat that sounded last, from 0; below 0 in the count-in, empty before the first. */
  public ReadOnlyObjectProperty<OptionalLong> beat() {
    return beat.getReadOnlyProperty();
  }

  /** The round, from 0. */
  public ReadOnlyIntegerProperty round() {
    return round.getReadOnlyProperty();
  }

  public RunSettings settings() {
    return settings;
  }

  /** The drill that is played, or would be. */
  public PlayableDrill drill() {
    return drill;
  }
}
