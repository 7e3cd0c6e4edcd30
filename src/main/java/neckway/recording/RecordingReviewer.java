package neckway.recording;

import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.file.sound.TakeReader;
import neckway.neck.BadInput;
import neckway.review.Clock;
import neckway.review.Review;
import neckway.review.words.OtherwisePlayed;
import neckway.run.Run;
import neckway.words.Wording;

/** Says what happened in a recording, as a live run's review does. */
public final class RecordingReviewer {
  /**
   * What came of it.
   *
   * @param review what is said of it
   * @param drill what it was held against: the one asked, or that one in all the rounds played
   * @param warning one line about a file that was read all the same, such as one cut short
   */
  public record Reviewed(Review review, PlayableDrill drill, Optional<String> warning) {
    /** The same with other sentences. */
    public Reviewed saying(List<String> words) {
      return new Reviewed(review.withWords(words), drill, warning);
    }
  }

  /** More than any live run waits before its count-in. */
  private static final double LEAD_SECONDS = 2;

  private RecordingReviewer() {}

  /**
   * Hears a recording to its end, in the thread that calls it. Where the player went on round after
   * round unannounced, it is heard again as so many rounds.
   *
   * @param progress told after each block
   * @param cancelled asked before each block; true ends it without a review
   * @return empty where it was cancelled
   * @throws BadInput where the file cannot be used: one line that says what it is and how to mend
   *     it
   */
  public static Optional<Reviewed> review(
      Recording recording, TakeFeed.Progress progress, BooleanSupplier cancelled) {
    Optional<TakeAlone> alone = recording.beside().map(beside -> TakeAlone.of(recording, beside));
    Hearing hearing =
        alone.isPresent()
            ? asked -> once(asked, alone.get(), progress, cancelled)
            : asked -> once(asked, progress, cancelled);
    return review(recording, hearing);
  }

  /** Hears a take from its beginning to its end; empty where that was cancelled. */
  private interface Hearing {
    Optional<Reviewed> of(Recording recording);
  }

  private static Optional<Reviewed> review(Recording recording, Hearing hearing) {
    Optional<Reviewed> asAsked = hearing.of(recording);
    if (asAsked.isEmpty()) {
      return asAsked;
    }
    Reviewed heard = asAsked.get();
    Optional<PlayableDrill> more =
        new RoundsPlayed(recording.drill(), heard.review()).drillWithAll();
    if (more.isEmpty()) {
      return asAsked;
    }
    int asked = recording.drill().rounds();
    return hearing
        .of(recording.heldAgainst(more.get()))
        .map(all -> all.saying(OtherwisePlayed.moreRounds(asked, more.get(), all.review())));
  }

  private static Optional<Reviewed> once(
      Recording recording, TakeFeed.Progress progress, BooleanSupplier cancelled) {
    try (TakeReader reader = TakeReader.open(recording.file(), recording.channel())) {
      double rate = reader.sampleRate();
      reader.frames().ifPresent(frames -> checkFirstBeat(recording, frames / rate));
      Run run = run(recording, rate);
      if (!TakeFeed.feed(reader, run::feed, progress, cancelled)) {
        return Optional.empty();
      }
      Review review = run.finish();
      checkFirstBeat(recording, review.take().seconds());
      return Optional.of(new Reviewed(review, recording.drill(), reader.warning()));
    }
  }

  private static Optional<Reviewed> once(
      Recording recording, TakeAlone alone, TakeFeed.Progress progress, BooleanSupplier cancelled) {
    double rate = alone.sampleRate();
    checkFirstBeat(recording, alone.samples().length / rate);
    Run run = run(recording, rate);
    if (!TakeFeed.feed(alone, run::feed, progress, cancelled)) {
      return Optional.empty();
    }
    return Optional.of(new Reviewed(run.finish(), recording.drill(), alone.warning()));
  }

  private static Run run(Recording recording, double rate) {
    return new Run(
        recording.drill(),
        recording.guitar(),
        rate,
        recording.firstBeat(),
        Clock.MEASURED,
        verdict -> {});
  }

  /**
   * A take that was lost in its count-in has its first beat beyond its end, and that is no slip.
   */
  private static void checkFirstBeat(Recording recording, double takeSeconds) {
    Pulse pulse = recording.drill().pulse();
    double latest = takeSeconds + LEAD_SECONDS + (pulse.countIn() + 1) * pulse.beatSeconds();
    double first = recording.firstBeat().orElse(0);
    if (!(first >= 0 && first <= latest)) {
      throw new BadInput(
          Wording.of(
              "machine.take.firstBeat",
              recording.file(),
              Wording.plain(first),
              Wording.fixed(takeSeconds, 1)));
    }
  }
}
