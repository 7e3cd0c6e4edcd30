package neckway.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.PrintWriter;
import neckway.calls.CalledRun;
import neckway.cli.option.JsonOption;
import neckway.cli.text.Page;
import neckway.cli.text.Wrapped;
import neckway.drill.PlayableDrill;
import neckway.file.CallsFile;
import neckway.file.JsonFile;
import neckway.file.ReviewFile;
import neckway.review.Review;

/** Hands out a review: to a file, or to standard output as words and a page, or as JSON alone. */
final class ReviewOutput {
  private ReviewOutput() {}

  /**
   * Tells a run in which switches were called. Its page was filled in as it was played; what became
   * of each call is in the JSON.
   *
   * @param takeName name of the take's file
   */
  static void tellCalled(
      PrintWriter out, JsonOption json, Review review, String takeName, CalledRun called) {
    Review said = called.told(review);
    ObjectNode all = CallsFile.review(said, takeName, called);
    if (json.toStandardOutput()) {
      out.print(JsonFile.text(all));
      out.flush();
      return;
    }
    said.summary().words().forEach(words -> Wrapped.print(out, words));
    out.flush();
    json.file().ifPresent(file -> JsonFile.write(file, all));
  }

  /**
   * Tells a review. The words come first: they are read even where the file cannot be written.
   *
   * @param takeName name of the take's file
   */
  static void tell(
      PrintWriter out, JsonOption json, Review review, String takeName, PlayableDrill drill) {
    if (json.toStandardOutput()) {
      out.print(JsonFile.text(ReviewFile.toJson(review, takeName, drill)));
      out.flush();
      return;
    }
    review.summary().words().forEach(words -> Wrapped.print(out, words));
    out.println();
    new Page(drill, review).print(out);
    json.file().ifPresent(file -> ReviewFile.write(file, review, takeName, drill));
  }
}
