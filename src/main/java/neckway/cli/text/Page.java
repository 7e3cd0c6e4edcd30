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
import neckway.words.Wording;

/** The page of a take that is over, as tab; what stands on it is told under the last line. */
public final class Page {
  private static final int LEAST_CELL = 4;

  private final PageModel page;
  private final Tab tab;
  private final int width;

  /** As wide as the terminal. */
  public Page(PlayableDrill drill, Review review) {
    this(drill, review, TerminalWidth.columns());
  }

  /**
   * @param width columns there are, 40 or more
   */
  Page(PlayableDrill drill, Review review, int width) {
    this.width = width;
    page = new PageModel(drill);
    page.review(review);
    tab = new Tab(drill, Math.max(LEAST_CELL, 1 + longest()), width, Tab.Bars.ALL_THAT_FIT);
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
                Stream.of(
                    s.sign(),
                    s.plannedSign(),
                    s.heardLabel(),
                    s.strayLabel(),
                    s.timeLabel(),
                    s.landingSign()))
        .mapToInt(String::length)
        .max()
        .orElse(0);
  }

  public void print(PrintWriter out) {
    tab.lines().forEach(line -> line(out, line));
    new Legend(page).print(out, width);
  }

  private void line(PrintWriter out, Tab.Line line) {
    optional(out, Wording.of("terminal.row.shift"), line, PageStep::landingSign);
    for (GuitarString string : tab.highestFirst()) {
      out.println(tab.row(string, line, s -> Tab.Cell.of(Tab.sign(page.at(s), string))));
    }
    optional(out, Wording.of("terminal.row.heard"), line, PageStep::heardLabel);
    optional(out, Wording.of("terminal.row.stray"), line, PageStep::strayLabel);
    optional(out, "ms", line, PageStep::timeLabel);
    out.println();
  }

  private void optional(
      PrintWriter out, String name, Tab.Line line, Function<PageStep, String> text) {
    IntStream steps = IntStream.range(line.from(), line.to());
    if (steps.anyMatch(s -> !text.apply(page.at(s)).isEmpty())) {
      out.println(tab.row(name, line, s -> text.apply(page.at(s))).stripTrailing());
    }
  }
}
