package neckway.desk.students;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import neckway.file.ReviewReader;
import neckway.folder.TakeJob;
import neckway.follow.Verdict;
import neckway.report.Report;
import neckway.review.Remarks;
import neckway.review.Review;

/**
 * One recording of the class.
 *
 * @param job the recording
 * @param name of its files, without an ending
 * @param read what came of it; empty where it could not be read
 * @param drill the title of what it was held against, and whether that is a guess
 * @param status one line on why it could not; empty where it could
 * @param moments its doubts and its slips, in the order of their time
 * @param remarks what the teacher said so far
 */
record Student(
    TakeJob job,
    String name,
    Optional<ReviewReader.DrillReviewed> read,
    String drill,
    String status,
    List<Report.WorthHearing> moments,
    Remarks remarks) {
  /** A note that sounds so near to a moment is the one that it tells of, seconds. */
  private static final double SAME_SECONDS = 0.005;

  /** A table says so behind the title of a drill that was not named. */
  private static final String GUESS = "(a guess)";

  Student {
    moments = List.copyOf(moments);
  }

  Student with(Remarks other) {
    return new Student(job, name, read, drill, status, moments, other);
  }

  Optional<Review> review() {
    return read.map(ReviewReader.DrillReviewed::review);
  }

  /** The drill, where it was not named for this recording; empty where it was. */
  Optional<String> guess() {
    return drill.endsWith(GUESS) ? Optional.of(drill) : Optional.empty();
  }

  int doubts() {
    return (int) moments.stream().filter(Report.WorthHearing::doubt).count();
  }

  int slips() {
    return moments.size() - doubts();
  }

  /** The note that a moment tells of, where it tells of one. */
  OptionalInt note(Report.WorthHearing moment) {
    return review().stream()
        .flatMapToInt(
            review ->
                IntStream.range(0, review.notes().size())
                    .filter(
                        i ->
                            review.notes().get(i).attempt() == review.reviewed()
                                && Math.abs(review.notes().get(i).time() - moment.time())
                                    < SAME_SECONDS))
        .findFirst();
  }

  /** What the teacher said of a note, if anything. */
  Optional<Verdict> said(int note) {
    return remarks.overruled().stream()
        .filter(by -> by.note() == note)
        .map(Remarks.Overruled::verdict)
        .findFirst();
  }
}
