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
 * @param overflows how often the device's buffer ran over since the run began
 * @param lostFrames frames that were never listened to since the run began
 * @param lessons what the round taught of the guitar
 */
public record LiveResult(
    int round,
    Review review,
    Optional<Path> take,
    Optional<ClickClock.Source> clock,
    long overflows,
    long lostFrames,
    List<Lesson> lessons) {}
