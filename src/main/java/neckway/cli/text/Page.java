package neckway.cli.text;

import java.io.PrintWriter;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import neckway.drill.PlayableDrill;
import neckway.neck.GuitarString;
import neckway.page.PageModel;
import neckway.page.PageStep;
import neckway.review.Review;

/** The page of a take that is over, as tab; what stands on it is told under the last line. */
public final class Page {
  private static final int LEAST_CELL = 4;

  private final PageModel page;
  private final Tab tab;

  public Page(PlayableDrill drill, Review review) {
    page = new PageModel(drill);
    page.review(review);
    tab = new Tab(drill, Math.max(LEAST_CELL, 1 + longest()));
  }

  /** What is drawn. */
  PageModel model() {
    return page;
  }

  /** Characters of the longest entry of the page. */
  private int longest() {
    return IntStream.range(0, page.steps())
        .mapToObj(page::at)
        .flatMap(
            s ->
                Stream.of(s.sign(), s.heardLabel(), s.strayLabel(), s.timeLabel(), s.landingSign()))
        .mapToInt(String::length)
        .max()
        .orElse(0);
  }

  public void print(PrintWriter out) {
    int perLine = tab.stepsPerLine();
    for (int from = 0; from < page.steps(); from += perLine) {
      line(out, from, Math.min(page.steps(), from + perLine));
    }
    new Legend(page).print(out);
  }

  private void line(PrintWriter out, int from, int to) {
    optional(out, "shift", from, to, PageStep::landingSign);
    for (GuitarString string : tab.highestFirst()) {
      out.println(tab.row(string, from, to, s -> Tab.Cell.of(page.at(s).sign())));
    }
    optional(out, "heard", from, to, PageStep::heardLabel);
    optional(out, "stray", from, to, PageStep::strayLabel);
    optional(out, "ms", from, to, PageStep::timeLabel);
    out.println();
  }

  private void optional(
      PrintWriter out, String name, int from, int to, Function<PageStep, String> text) {
    if (IntStream.range(from, to).anyMatch(s -> !text.apply(page.at(s)).isEmpty())) {
      out.println(tab.row(name, from, to, s -> text.apply(page.at(s))).stripTrailing());
    }
  }
}
