package neckway.recording;

import java.util.Optional;
import java.util.function.BooleanSupplier;
import neckway.file.sound.TakeReader;
import neckway.review.Clock;
import neckway.review.Review;
import neckway.run.Run;

/** Says what happened in a recording, as a live run's review does. */
public final class RecordingReviewer {
  /**
   * What came of it.
   *
   * @param review what is said of it
   * @param warning one line about a file that was read all the same, such as one cut short
   */
  public record Reviewed(Review review, Optional<String> warning) {}

  private RecordingReviewer() {}

  /**
   * Hears a recording to its end, in the thread that calls it.
   *
   * @param progress told after each block
   * @param cancelled asked before each block; true ends it without a review
   * @return empty where it was cancelled
   * @throws neckway.neck.BadInput where the file cannot be used: one line that says what it is and
   *     how to mend it
   */
  public static Optional<Reviewed> review(
      Recording recording, TakeFeed.Progress progress, BooleanSupplier cancelled) {
    try (TakeReader reader = TakeReader.open(recording.file(), recording.channel())) {
      Run run =
          new Run(
              recording.drill(),
              recording.guitar(),
              reader.sampleRate(),
              recording.firstBeat(),
              Clock.MEASURED,
              verdict -> {});
      return TakeFeed.feed(reader, run::feed, progress, cancelled)
          ? Optional.of(new Reviewed(run.finish(), reader.warning()))
          : Optional.empty();
    }
  }
}
