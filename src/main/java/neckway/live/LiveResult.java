package neckway.live;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import neckway.review.Review;
import neckway.sound.ClickClock;
import neckway.string.Lesson;

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
 */
public record LiveResult(
    int round,
    Review review,
    Optional<Path> take,
    Optional<ClickClock.Source> clock,
    long overflows,
    long lostFrames,
    List<Lesson> lessons) {
  /**
   * What to tell where the computer was too slow to take all sound in; empty where it took all. A
   * device that was lost is told by itself, as a complaint.
   */
  public Optional<String> soundMissed() {
    return overflows + lostFrames == 0
        ? Optional.empty()
        : Optional.of(
            "some of the sound was missed, since the computer was too busy; a note told as left"
                + " out may have been played: close other programs");
  }
}
