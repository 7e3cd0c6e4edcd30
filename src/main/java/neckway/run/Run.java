package neckway.run;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.function.Consumer;
import neckway.drill.PlayableDrill;
import neckway.follow.Compass;
import neckway.follow.Follower;
import neckway.follow.NoteVerdict;
import neckway.follow.UnnamedStep;
import neckway.follow.VerdictListener;
import neckway.hand.ShiftDetector;
import neckway.hear.Ear;
import neckway.hear.HeardNote;
import neckway.hear.NoteListener;
import neckway.review.Clock;
import neckway.review.GuitarKnown;
import neckway.review.Review;
import neckway.review.Reviewer;
import neckway.review.TakeFigures;
import neckway.review.words.Words;
import neckway.string.GuitarProfile;
import neckway.string.Lesson;
import neckway.string.Lessons;
import neckway.string.NoteSounds;

/**
 * One run, live or from a recording: sound in, verdicts out as they are given, and a review at the
 * end. What the sound is fed from makes no difference.
 *
 * <p>The strings of the notes are found on a thread of their own, so that a closer look at some of
 * them does not keep the ear from the next note. What is said of a shift is told on the thread that
 * calls {@link #feed} or {@link #finish}, as soon as one of them is called.
 */
public final class Run {
  private final PlayableDrill drill;
  private final double sampleRateHz;
  private final OptionalDouble firstBeat;
  private final RunListener listener;
  private final Ear ear;
  private final NoteListener notes = new Notes();
  private final Follower follower;
  private final ShiftDetector shifts;
  private final Clock clock;
  private final Optional<NoteSounds> sounds;

  /** Does what has to do with strings and hand; without a guitar there is next to nothing to do. */
  private final Optional<SerialWorker> beside;

  /** What was said of shifts and is to be told. */
  private final Queue<Runnable> untold = new ConcurrentLinkedQueue<>();

  private final List<NoteVerdict> verdicts = new ArrayList<>();
  private final List<UnnamedStep> unnamed = new ArrayList<>();

  /** What the follower said, for a hand that is to be followed once more. */
  private final List<Consumer<ShiftDetector>> followed = new ArrayList<>();

  private long frames;
  private boolean finished;

  /**
   * @param drill what the run is held against
   * @param guitar the guitar played, if it was learnt
   * @param sampleRateHz 8,000 to 192,000
   * @param firstBeat when step 0 is due, seconds from the first sample, if known
   * @param clock whether the sound's times can be held against the click's
   * @param listener told each verdict as it is given
   */
  public Run(
      PlayableDrill drill,
      Optional<GuitarProfile> guitar,
      double sampleRateHz,
      OptionalDouble firstBeat,
      Clock clock,
      RunListener listener) {
    this.drill = drill;
    this.sampleRateHz = sampleRateHz;
    this.firstBeat = firstBeat;
    this.listener = Objects.requireNonNull(listener);
    Compass compass = Compass.of(drill.tuning(), drill.frets());
    ear = new Ear(sampleRateHz, Math.max(Ear.LOWEST_HZ, compass.lowestHz()));
    ear.expectClicks(drill.pulse().beatSeconds(), drill.pulse().beatsPerBar());
    follower = new Follower(drill.route(), drill.pulse(), compass, firstBeat, new Verdicts());
    shifts =
        new ShiftDetector(
            drill, guitar, (attempt, said) -> untold.add(() -> listener.shifted(attempt, said)));
    this.clock = clock;
    sounds =
        guitar.map(learnt -> new NoteSounds(sampleRateHz, learnt, drill.frets(), shifts::sounded));
    beside = guitar.map(learnt -> new SerialWorker("strings"));
  }

  /** What the ear tells goes to the strings and to the follower. */
  private final class Notes implements NoteListener {
    @Override
    public void heard(HeardNote note) {
      sounds.ifPresent(s -> beside(() -> s.heard(note)));
      follower.heard(note);
    }

    @Override
    public void listenedUntil(double seconds) {
      follower.listenedUntil(seconds);
      sounds.ifPresent(s -> beside(() -> s.listenedUntil(seconds)));
    }
  }

  /** What the follower says is kept, goes to the hand, and is told. */
  private final class Verdicts implements VerdictListener {
    @Override
    public void decided(NoteVerdict verdict) {
      verdicts.add(verdict);
      followed.add(to -> to.decided(verdict));
      beside(() -> shifts.decided(verdict));
      listener.decided(verdict);
    }

    @Override
    public void unnamed(int attempt, int step) {
      unnamed.add(new UnnamedStep(attempt, step));
      followed.add(to -> to.unnamed(attempt, step));
      beside(() -> shifts.unnamed(attempt, step));
      listener.unnamed(attempt, step);
    }
  }

  /** What has to do with strings and hand, in its order. */
  private void beside(Runnable work) {
    beside.ifPresentOrElse(b -> b.add(work), work);
  }

  /** Takes samples from -1 to 1, in blocks of any size. */
  public void feed(float[] samples, int offset, int length) {
    if (finished) {
      throw new IllegalStateException("the run is over");
    }
    frames += length;
    int most = sounds.map(NoteSounds::longestBlock).orElse(length);
    for (int from = 0; from < length; from += most) {
      int block = Math.min(most, length - from);
      int start = offset + from;
      sounds.ifPresent(s -> feed(s, samples, start, block));
      ear.process(samples, start, block, notes);
      beside.ifPresent(SerialWorker::handOver);
      tellShifts();
    }
  }

  private void feed(NoteSounds to, float[] samples, int start, int length) {
    float[] copy = Arrays.copyOfRange(samples, start, start + length);
    beside(() -> to.feed(copy, 0, length));
  }

  private void tellShifts() {
    for (Runnable tell = untold.poll(); tell != null; tell = untold.poll()) {
      tell.run();
    }
  }

  /** The sound is over. */
  public Review finish() {
    if (finished) {
      throw new IllegalStateException("the run is over");
    }
    finished = true;
    double seconds = frames / sampleRateHz;
    ear.finish(notes);
    follower.finish(seconds);
    sounds.ifPresent(s -> beside(s::finish));
    beside(() -> shifts.finish(seconds));
    beside.ifPresent(SerialWorker::finish);
    tellShifts();
    TakeFigures take =
        new TakeFigures(seconds, sampleRateHz, ear.peakDbfs(), ear.noiseDbfs(), ear.tuningCents());
    List<NoteVerdict> settled =
        verdicts.stream().map(v -> v.withPitch(ear.settledPitch(v.note().index()))).toList();
    Review review =
        reviewer(seconds).review(settled, unnamed, ear::isSteady, firstBeat, ear.clicks(), take);
    if (drill.isCalled()) {
      return review;
    }
    return review.withWords(
        OtherDrill.said(drill, review).orElseGet(() -> Words.of(drill, review)));
  }

  /** Where another guitar was heard than the one that was learnt, no strings are told. */
  private Reviewer reviewer(double seconds) {
    if (!shifts.hearsAnotherGuitar()) {
      GuitarKnown known = sounds.isPresent() ? GuitarKnown.LEARNT : GuitarKnown.NOT_LEARNT;
      return new Reviewer(drill, known, shifts, clock);
    }
    ShiftDetector byPitchAlone = new ShiftDetector(drill, Optional.empty(), (attempt, said) -> {});
    followed.forEach(said -> said.accept(byPitchAlone));
    byPitchAlone.finish(seconds);
    return new Reviewer(drill, GuitarKnown.ANOTHER, byPitchAlone, clock);
  }

  /**
   * What the run has taught of the guitar that it was played on, once it is finished; nothing where
   * that was another one.
   */
  public List<Lesson> lessons() {
    return shifts
        .lessons()
        .filter(lessons -> !lessons.areOfAnotherGuitar())
        .map(Lessons::all)
        .orElse(List.of());
  }

  /** The verdicts given so far. */
  public List<NoteVerdict> verdicts() {
    return Collections.unmodifiableList(verdicts);
  }

  /** Seconds of sound so far. */
  public double seconds() {
    return frames / sampleRateHz;
  }
}
