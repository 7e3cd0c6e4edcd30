package neckway.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import neckway.cli.text.Page;
import neckway.cli.text.Wrapped;
import neckway.drill.PlayableDrill;
import neckway.file.JsonFile;
import neckway.file.ReviewFile;
import neckway.review.Review;

/** Hands out a review: to a file, or to standard output as words and a page, or as JSON alone. */
final class ReviewOutput {
  /** The file name that stands for standard output. */
  static final String STANDARD_OUTPUT = "-";

  private ReviewOutput() {}

  /**
   * Tells a review.
   *
   * @param json a file to write, "-" for standard output and nothing else there, or null
   * @param takeName name of the take's file
   */
  static void tell(
      PrintWriter out, String json, Review review, String takeName, PlayableDrill drill) {
    if (STANDARD_OUTPUT.equals(json)) {
      out.print(JsonFile.text(ReviewFile.toJson(review, takeName, drill)));
      out.flush();
      return;
    }
    if (json != null) {
      ReviewFile.write(Path.of(json), review, takeName, drill);
    }
    review.summary().words().forEach(words -> Wrapped.print(out, words));
    out.println();
    new Page(drill, review).print(out);
  }
}
