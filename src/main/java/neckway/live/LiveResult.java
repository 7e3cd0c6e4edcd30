package neckway.live;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import neckway.review.Review;
import neckway.sound.ClickClock;
import neckway.string.Lesson;
import neckway.words.Wording;

/**
 * One round of a live run, over.
 *
 * @param round from 0
 * @param review what is said of it
 * @param take where it was saved; empty where nothing was to be saved
 * @param clock how the click's times are known; empty where nothing clicked
 * @param overflows how often the device's buffer ran over in it
 * @param lostFrames frames of it that were never listened to
 * @param lessons what the round taught of the guitar
 * @param backing what came of what was played in place of the click; empty where nothing was
 */
public record LiveResult(
    int round,
    Review review,
    Optional<Path> take,
    Optional<ClickClock.Source> clock,
    long overflows,
    long lostFrames,
    List<Lesson> lessons,
    Optional<Backing> backing) {
  /**
   * What came of a backing.
   *
   * @param takenOut whether it was heard, so that it was taken out of what came in
   * @param file where what was played is kept, on the take's frames; empty where no take is
   */
  public record Backing(boolean takenOut, Optional<Path> file) {}

  /** One of a round that the click alone led. */
  public LiveResult(
      int round,
      Review review,
      Optional<Path> take,
      Optional<ClickClock.Source> clock,
      long overflows,
      long lostFrames,
      List<Lesson> lessons) {
    this(round, review, take, clock, overflows, lostFrames, lessons, Optional.empty());
  }

  /** The same with what else is said of it. */
  public LiveResult with(Review said) {
    return new LiveResult(round, said, take, clock, overflows, lostFrames, lessons, backing);
  }

  /**
   * What to tell where the computer was too slow to take all sound in; empty where it took all. A
   * device that was lost is told by itself, as a complaint.
   */
  public Optional<String> soundMissed() {
    return overflows + lostFrames == 0
        ? Optional.empty()
        : Optional.of(Wording.of("machine.live.missed"));
  }
}
