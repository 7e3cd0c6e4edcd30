package neckway.review;

import java.util.List;
import java.util.Optional;
import neckway.follow.Verdict;

/**
 * What a teacher says of a take, beside what was heard in it.
 *
 * @param overall of the take as a whole
 * @param moments in the order of their time
 * @param overruled notes of which the teacher says something else
 */
public record Remarks(Optional<String> overall, List<Moment> moments, List<Overruled> overruled) {
  /** Where nothing was said. */
  public static final Remarks NONE = new Remarks(Optional.empty(), List.of(), List.of());

  /**
   * What is said of a moment.
   *
   * @param time seconds from the first sample of the take
   * @param text as the teacher wrote it
   */
  public record Moment(double time, String text) {}

  /**
   * A verdict of the teacher's.
   *
   * @param note index into the review's notes
   * @param verdict what it was, as the teacher says
   */
  public record Overruled(int note, Verdict verdict) {}

  public Remarks {
    moments = List.copyOf(moments);
    overruled = List.copyOf(overruled);
  }
}
