package neckway.desk.read;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.concurrent.Executor;
import java.util.function.DoubleSupplier;
import java.util.stream.IntStream;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import neckway.desk.Texts;
import neckway.desk.page.PageLegend;
import neckway.desk.page.PageWords;
import neckway.drill.Pulse;
import neckway.follow.Verdict;
import neckway.hand.ShiftVerdict;
import neckway.neck.BadInput;
import neckway.page.PageModel;
import neckway.review.Landings;
import neckway.review.Review;
import neckway.review.ReviewedNote;
import neckway.review.ReviewedShift;
import neckway.review.StepVerdict;
import neckway.review.words.Sentence;
import neckway.review.words.Sentence.Part;
import neckway.review.words.Words;
import neckway.sound.Clip;
import neckway.sound.TimeStretch;

/**
 * A take being read: its sentences, its page with a note pointed at, a shift in close-up, and what
 * can be heard of it.
 */
public final class ReadingModel {
  /** How fast the take is heard. */
  public enum Speed {
    FULL(1),
    THREE_QUARTERS(0.75),
    HALF(0.5);

    private final double factor;

    Speed(double factor) {
      this.factor = factor;
    }

    /** Share of the speed at which it was played. */
    public double factor() {
      return factor;
    }
  }

  /** What is heard. */
  public enum Hearing {
    NOTHING,
    /** The take, from a note on. */
    TAKE,
    /** The shift in close-up, over and over. */
    SHIFT,
    /** How the route should sound. */
    MODEL
  }

  /**
   * What was asked to be heard.
   *
   * @param fromSeconds where in the take; of no use for how it should sound
   * @param toSeconds where in the take
   * @param step from which step on
   */
  private record Asked(Hearing what, double fromSeconds, double toSeconds, int step) {}

  /**
   * What sounds now.
   *
   * @param factor its speed
   */
  private record Sounding(Asked asked, Clip clip, double factor) {}

  /**
   * A round that was played since the window opened.
   *
   * @param number from 1
   */
  public record Round(int number, ReadTake take) {}

  /**
   * What is to be seen of the page.
   *
   * @param step the step that is to be in sight
   * @param asked how often something was to be seen; the same step may be asked for again
   */
  public record Sight(int step, long asked) {}

  /** Rounds that can be chosen; of more, the first ones are let go (their takes are kept). */
  static final int MOST_ROUNDS = 200;

  /** Heard at a time at most, seconds of the take. */
  static final double MOST_SECONDS = 30;

  private static final double BEFORE_NOTE_SECONDS = 0.03;
  private static final int COLUMNS = 1200;

  private final ClipOutput player;
  private final DoubleSupplier volume;
  private final Executor work;
  private final Executor window;
  private final PageWords words = new PageWords();

  private final ReadOnlyObjectWrapper<Optional<ReadTake>> take =
      new ReadOnlyObjectWrapper<>(this, "take", Optional.empty());
  private final ReadOnlyObjectWrapper<List<Round>> rounds =
      new ReadOnlyObjectWrapper<>(this, "rounds", List.of());
  private final ReadOnlyObjectWrapper<PageModel> page = new ReadOnlyObjectWrapper<>(this, "page");
  private final ReadOnlyObjectWrapper<List<Sentence>> sentences =
      new ReadOnlyObjectWrapper<>(this, "sentences", List.of());
  private final ReadOnlyStringWrapper played = new ReadOnlyStringWrapper(this, "played", "");
  private final ReadOnlyStringWrapper figures = new ReadOnlyStringWrapper(this, "figures", "");
  private final ReadOnlyStringWrapper legend = new ReadOnlyStringWrapper(this, "legend", "");
  private final ReadOnlyStringWrapper pointed = new ReadOnlyStringWrapper(this, "pointed", "");
  private final ReadOnlyStringWrapper line = new ReadOnlyStringWrapper(this, "line", "");
  private final ReadOnlyObjectWrapper<Speed> speed =
      new ReadOnlyObjectWrapper<>(this, "speed", Speed.FULL);
  private final ReadOnlyObjectWrapper<Hearing> hearing =
      new ReadOnlyObjectWrapper<>(this, "hearing", Hearing.NOTHING);
  private final ReadOnlyObjectWrapper<Optional<CloseUp>> closeUp =
      new ReadOnlyObjectWrapper<>(this, "closeUp", Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<Waveform>> waveform =
      new ReadOnlyObjectWrapper<>(this, "waveform", Optional.empty());
  private final ReadOnlyObjectWrapper<Sight> sight =
      new ReadOnlyObjectWrapper<>(this, "sight", new Sight(0, 0));
  private int shift;
  private int turn;
  private Asked last = new Asked(Hearing.NOTHING, 0, 0, 0);
  private Optional<Sounding> now = Optional.empty();

  /**
   * @param volume how loud, 0 to 1; asked on any thread
   * @param work runs what reads files and makes sound
   * @param window runs what changes this model
   */
  public ReadingModel(ClipOutput player, DoubleSupplier volume, Executor work, Executor window) {
    this.player = player;
    this.volume = volume;
    this.work = work;
    this.window = window;
  }

  /** Takes in the rounds of a run, which is over, and reads the last of them. */
  public void openRun(List<ReadTake> run) {
    List<Round> all = new ArrayList<>(rounds.get());
    int number = all.isEmpty() ? 0 : all.get(all.size() - 1).number();
    for (ReadTake each : run) {
      number++;
      all.add(new Round(number, each));
    }
    rounds.set(List.copyOf(all.subList(Math.max(0, all.size() - MOST_ROUNDS), all.size())));
    open(run.get(run.size() - 1));
  }

  /** The round that is read; none where a recording is. */
  public Optional<Round> round() {
    return rounds.get().stream()
        .filter(r -> take.get().filter(t -> t == r.take()).isPresent())
        .findFirst();
  }

  /** Reads the round before the one that is read, before the first the last. */
  public void roundBefore() {
    List<Round> all = rounds.get();
    if (all.size() > 1 || !all.isEmpty() && round().isEmpty()) {
      int at = round().map(all::indexOf).orElse(0);
      open(all.get((at + all.size() - 1) % all.size()).take());
    }
  }

  /** Reads another take. */
  public void open(ReadTake other) {
    stop();
    line.set("");
    PageModel next = new PageModel(other.drill());
    next.review(other.review());
    page.set(next);
    legend.set(PageLegend.of(next));
    sentences.set(Words.said(other.drill(), other.review()));
    figures.set(ReadingWords.figures(other, sentences.get()));
    played.set(ReadingWords.played(other));
    take.set(Optional.of(other));
    pointed.set("");
    shift = worstShift(other.review().shifts());
    focusShift();
    look(opensAt(other.review(), sentences.get()));
  }

  private void look(int step) {
    sight.set(new Sight(step, sight.get().asked() + 1));
  }

  /** The first slip; where there is none, what the advice is about; else the first step. */
  private static int opensAt(Review review, List<Sentence> said) {
    IntStream steps =
        review.steps().stream()
            .filter(s -> s.verdict() == StepVerdict.WRONG || s.verdict() == StepVerdict.SKIPPED)
            .mapToInt(s -> s.step().index());
    IntStream twice =
        review.notes().stream()
            .filter(n -> n.attempt() == review.reviewed() && n.verdict() == Verdict.REPEAT)
            .flatMapToInt(n -> n.step().stream());
    OptionalInt slip = IntStream.concat(steps, twice).min();
    return slip.orElseGet(() -> advisedStep(said).orElse(0));
  }

  /** The first step of what to do next. */
  private static OptionalInt advisedStep(List<Sentence> said) {
    return said.stream()
        .filter(sentence -> sentence.part() == Part.NEXT)
        .flatMap(sentence -> sentence.steps().stream())
        .mapToInt(step -> step)
        .findFirst();
  }

  /** Points at the first note that a sentence tells of; where it is pointed at, at the next one. */
  public void goTo(Sentence sentence) {
    List<Integer> named = sentence.steps();
    if (!named.isEmpty()) {
      int step =
          page.get()
              .selected()
              .filter(named::contains)
              .map(at -> named.get((named.indexOf(at) + 1) % named.size()))
              .orElse(named.get(0));
      point(step);
      landingAt(step).ifPresent(this::near);
    }
  }

  private OptionalInt landingAt(int step) {
    List<ReviewedShift> shifts = take.get().orElseThrow().review().shifts();
    Landings landings = new Landings(take.get().orElseThrow().drill());
    return IntStream.range(0, shifts.size())
        .filter(i -> landings.step(shifts.get(i)) == step)
        .findFirst();
  }

  private void near(int index) {
    shift = index;
    focusShift();
  }

  /** The shift that went worst: one that was not made where planned, or else the latest. */
  static int worstShift(List<ReviewedShift> shifts) {
    return IntStream.range(0, shifts.size())
        .boxed()
        .max((a, b) -> Double.compare(badness(shifts.get(a)), badness(shifts.get(b))))
        .orElse(0);
  }

  private static double badness(ReviewedShift shift) {
    double late = Math.abs(shift.lateMs().orElse(0));
    return switch (shift.verdict()) {
      case MISSED -> 2e6 + late;
      case MOVED -> 1e6 + late;
      case MADE, UNHEARD -> late;
      case UNPLAYED -> -1;
    };
  }

  // ---- pointing

  /** Points at a step. */
  public void point(int step) {
    if (page.get() != null) {
      page.get().select(step);
      int at = page.get().selected().orElseThrow();
      pointed.set(words.spoken(page.get(), at));
      look(at);
    }
  }

  /** Points at a step so many later; without one pointed at, at the first. */
  public void pointBy(int steps) {
    if (page.get() != null) {
      point(page.get().selected().map(s -> s + steps).orElse(0));
    }
  }

  /** Brings the next shift into close-up, after the last one the first; a loop goes on with it. */
  public void nextShift() {
    take.get()
        .filter(t -> !t.review().shifts().isEmpty())
        .ifPresent(
            t -> {
              near((shift + 1) % t.review().shifts().size());
              if (hearing.get() == Hearing.SHIFT) {
                stop();
                loopShift();
              }
              closeUp.get().ifPresent(c -> look(c.shift().planned().landingStep()));
            });
  }

  private void focusShift() {
    waveform.set(Optional.empty());
    Optional<ReadTake> shown =
        take.get()
            .filter(t -> !t.review().shifts().isEmpty())
            .filter(t -> t.review().shifts().get(shift).verdict() != ShiftVerdict.UNPLAYED);
    closeUp.set(shown.map(t -> CloseUp.of(t, shift)));
    CloseUp near = closeUp.get().orElse(null);
    if (near == null || shown.get().take().isEmpty()) {
      return;
    }
    ReadTake of = shown.get();
    work.execute(
        () -> {
          try {
            TakeSound sound = TakeSound.read(of.take().get(), near.fromSeconds(), near.toSeconds());
            Waveform outline = Waveform.of(sound.samples(), COLUMNS);
            window.execute(
                () -> {
                  if (closeUp.get().filter(c -> c == near).isPresent()) {
                    waveform.set(Optional.of(outline));
                  }
                });
          } catch (BadInput e) {
            window.execute(() -> line.set(e.getMessage()));
          }
        });
  }

  // ---- hearing

  /** The next slower speed, after the slowest the full one. What sounds goes on at that speed. */
  public void nextSpeed() {
    OptionalDouble at = playhead();
    speed.set(Speed.values()[(speed.get().ordinal() + 1) % Speed.values().length]);
    switch (hearing.get()) {
      case NOTHING -> {}
      case TAKE -> begin(from(last, at.orElse(last.fromSeconds())));
      case SHIFT, MODEL -> begin(last);
    }
  }

  private static Asked from(Asked asked, double seconds) {
    return new Asked(asked.what(), seconds, asked.toSeconds(), asked.step());
  }

  /** Hears the take from the note pointed at, or from the first one; or stops that. */
  public void hear() {
    if (hearing.get() == Hearing.TAKE) {
      stop();
    } else {
      take.get().ifPresent(t -> begin(takeFrom(t, page.get().selected().orElse(0))));
    }
  }

  /** Points at a step and hears the take from there; or stops that, where it is what sounds. */
  public void hearFrom(int step) {
    boolean sounds = hearing.get() == Hearing.TAKE && last.step() == step;
    point(step);
    if (sounds) {
      stop();
    } else {
      take.get().ifPresent(t -> begin(takeFrom(t, step)));
    }
  }

  private Asked takeFrom(ReadTake t, int step) {
    double from = Math.max(0, seconds(t, step) - BEFORE_NOTE_SECONDS);
    return new Asked(Hearing.TAKE, from, from + MOST_SECONDS, step);
  }

  private double seconds(ReadTake t, int step) {
    Optional<ReviewedNote> note = page.get().note(step).map(t.review().notes()::get);
    return note.map(ReviewedNote::time).orElse(t.review().steps().get(step).due());
  }

  /** Hears the shift in close-up over and over, or stops that. */
  public void loopShift() {
    if (hearing.get() == Hearing.SHIFT) {
      stop();
    } else {
      closeUp
          .get()
          .map(near -> new Asked(Hearing.SHIFT, near.fromSeconds(), near.toSeconds(), 0))
          .ifPresent(this::begin);
    }
  }

  /** Hears how it should sound, from the note pointed at on; or stops that. */
  public void hearModel() {
    if (hearing.get() == Hearing.MODEL) {
      stop();
    } else if (take.get().isPresent()) {
      begin(new Asked(Hearing.MODEL, 0, 0, page.get().selected().orElse(0)));
    }
  }

  private void begin(Asked what) {
    ReadTake t = take.get().orElseThrow();
    if (what.what() != Hearing.MODEL && t.take().isEmpty()) {
      line.set(Texts.of("read.noSound"));
      return;
    }
    stop();
    int mine = turn;
    last = what;
    hearing.set(what.what());
    double factor = speed.get().factor();
    work.execute(
        () -> {
          try {
            Sounding sounding = new Sounding(what, clip(t, what, factor), factor);
            window.execute(() -> play(mine, sounding));
          } catch (BadInput e) {
            window.execute(() -> ended(mine, e.getMessage()));
          }
        });
  }

  private Clip clip(ReadTake t, Asked what, double factor) {
    if (what.what() == Hearing.MODEL) {
      TakeSound model = ModelSound.of(t, what.step(), factor);
      return Clip.ofLevelled(model.samples(), model.sampleRate(), false, volume);
    }
    TakeSound sound = TakeSound.read(t.take().get(), what.fromSeconds(), what.toSeconds());
    float[] slower = TimeStretch.slowed(sound.samples(), sound.sampleRate(), factor);
    return Clip.of(slower, sound.sampleRate(), what.what() == Hearing.SHIFT, volume);
  }

  private void play(int mine, Sounding sounding) {
    if (mine == turn) {
      now = Optional.of(sounding);
      work.execute(
          () ->
              player.play(
                  sounding.clip(), complaint -> window.execute(() -> ended(mine, complaint))));
    }
  }

  private void ended(int mine, String complaint) {
    if (!complaint.isEmpty()) {
      line.set(complaint);
    }
    if (mine == turn) {
      now = Optional.empty();
      hearing.set(Hearing.NOTHING);
    }
  }

  /** Stops what sounds. */
  public void stop() {
    turn++;
    now = Optional.empty();
    hearing.set(Hearing.NOTHING);
    work.execute(player::stop);
  }

  /** How much of what sounds has been heard, 0 to 1; of a loop, of this time round. */
  public OptionalDouble heardShare() {
    return now.filter(s -> s.clip().frames() > 0)
        .map(s -> OptionalDouble.of((double) heardFrames(s) / s.clip().frames()))
        .orElse(OptionalDouble.empty());
  }

  private long heardFrames(Sounding s) {
    long frames = player.framesHeard();
    return s.clip().loop() ? frames % s.clip().frames() : Math.min(frames, s.clip().frames());
  }

  private double heardSeconds(Sounding s) {
    return s.factor() * heardFrames(s) / s.clip().sampleRate();
  }

  /** Where in the take that which sounds is, seconds; empty where the take does not sound. */
  public OptionalDouble playhead() {
    return now.filter(s -> s.asked().what() != Hearing.MODEL && s.clip().frames() > 0)
        .map(s -> OptionalDouble.of(s.asked().fromSeconds() + heardSeconds(s)))
        .orElse(OptionalDouble.empty());
  }

  /** The step that sounds. */
  public OptionalInt soundingStep() {
    if (now.isEmpty() || now.get().clip().frames() == 0) {
      return OptionalInt.empty();
    }
    ReadTake t = take.get().orElseThrow();
    Sounding s = now.get();
    int steps = t.review().steps().size();
    if (s.asked().what() == Hearing.MODEL) {
      Pulse pulse = t.drill().pulse();
      double heard = pulse.dueSeconds(s.asked().step()) + heardSeconds(s);
      return IntStream.range(0, steps).filter(step -> pulse.dueSeconds(step) <= heard).max();
    }
    double at = playhead().orElseThrow();
    return IntStream.range(0, steps).filter(step -> seconds(t, step) <= at).max();
  }

  // ---- what is shown

  /** The take that is read, once there is one. */
  public ReadOnlyObjectProperty<Optional<ReadTake>> take() {
    return take.getReadOnlyProperty();
  }

  /** The rounds that were played since the window opened, in order. */
  public ReadOnlyObjectProperty<List<Round>> rounds() {
    return rounds.getReadOnlyProperty();
  }

  /** What is to be seen of the page. */
  public ReadOnlyObjectProperty<Sight> sight() {
    return sight.getReadOnlyProperty();
  }

  /** Its page; null before the first take. */
  public ReadOnlyObjectProperty<PageModel> page() {
    return page.getReadOnlyProperty();
  }

  /** What is said of it. */
  public ReadOnlyObjectProperty<List<Sentence>> sentences() {
    return sentences.getReadOnlyProperty();
  }

  /** What stands first: what to do next, or where nothing is advised the first that is said. */
  public Optional<Sentence> headline() {
    List<Sentence> said = sentences.get();
    return said.stream()
        .filter(sentence -> sentence.part() == Part.NEXT)
        .findFirst()
        .or(() -> said.stream().filter(sentence -> sentence.part() == Part.DETAIL).findFirst());
  }

  /** What is said besides what stands first and the score. */
  public List<Sentence> details() {
    Sentence first = headline().orElse(null);
    return sentences.get().stream()
        .filter(sentence -> sentence.part() == Part.DETAIL && sentence != first)
        .toList();
  }

  /** Its drill, tempo and date; of a recording its drill, tempo and file. */
  public ReadOnlyStringProperty played() {
    return played.getReadOnlyProperty();
  }

  /** How many notes were right, what the player thought, bias and steadiness. */
  public ReadOnlyStringProperty figures() {
    return figures.getReadOnlyProperty();
  }

  /** The signs that stand on the page, and what they mean. */
  public ReadOnlyStringProperty legend() {
    return legend.getReadOnlyProperty();
  }

  /** The note that is pointed at, in words. */
  public ReadOnlyStringProperty pointed() {
    return pointed.getReadOnlyProperty();
  }

  /** One line about what went amiss; empty where nothing did. */
  public ReadOnlyStringProperty line() {
    return line.getReadOnlyProperty();
  }

  public ReadOnlyObjectProperty<Speed> speed() {
    return speed.getReadOnlyProperty();
  }

  /** What is being heard. */
  public ReadOnlyObjectProperty<Hearing> hearing() {
    return hearing.getReadOnlyProperty();
  }

  /** The shift in close-up, where one was played. */
  public ReadOnlyObjectProperty<Optional<CloseUp>> closeUp() {
    return closeUp.getReadOnlyProperty();
  }

  /** Its sound's outline, once it was read. */
  public ReadOnlyObjectProperty<Optional<Waveform>> waveform() {
    return waveform.getReadOnlyProperty();
  }

  /** Index of the shift in close-up. */
  public OptionalInt shift() {
    return closeUp.get().isPresent() ? OptionalInt.of(shift) : OptionalInt.empty();
  }
}
