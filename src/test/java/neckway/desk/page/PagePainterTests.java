package neckway.desk.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import javafx.scene.Scene;
import neckway.desk.FxWindow;
import neckway.drill.Drills;
import neckway.drill.PlayableDrill;
import neckway.hand.ShiftSaid;
import neckway.hand.ShiftVerdict;
import neckway.neck.PlannedShift;
import neckway.page.PageModel;
import neckway.page.PageModel.Marks;
import neckway.page.PagedTake;
import neckway.player.Performance;
import neckway.player.plan.Mistake;
import neckway.review.Clock;
import neckway.review.Review;
import neckway.run.Run;
import org.junit.jupiter.api.Test;

/** How strongly the notes of a page are written, measured in its picture. */
class PagePainterTests {
  private static final int WIDTH = 1230;
  private static final int HEIGHT = 500;
  private static final int LEAD = 4;

  private final PlayableDrill drill = Drills.example();
  private final PageModel page = new PageModel(drill);

  /**
   * Ink in the room of a step: the sum of how much darker than paper its pixels are, 0 to 1 each.
   */
  private double ink(BufferedImage image, PageLayout at, int step) {
    int line = at.line(step, page.barSteps());
    double x = at.x(step, page.barSteps());
    double y = at.top(line) + (page.step(step).place().string().number() - 1) * at.stringGap();
    double reach = 0.36 * at.font();
    double sum = 0;
    for (int i = (int) (x - reach); i <= x + reach; i++) {
      for (int j = (int) (y - reach); j <= y + reach; j++) {
        sum += 1 - (image.getRGB(i, j) >> 8 & 255) / 255.0;
      }
    }
    return sum;
  }

  private BufferedImage picture(int lead) {
    try (FxWindow window =
        FxWindow.open(
            () -> {
              PageView view = new PageView(page);
              if (lead > 0) {
                view.lead(lead);
              }
              return new Scene(view, WIDTH, HEIGHT);
            })) {
      return window.picture();
    }
  }

  /** Everything of a grey is grey: no pixel of a note has a hue. */
  private static double hue(BufferedImage image, PageLayout at, int step, int barSteps) {
    double x = at.x(step, barSteps);
    double top = at.top(at.line(step, barSteps)) - 0.5 * at.font();
    double bottom = at.bottom(at.line(step, barSteps)) + 0.5 * at.font();
    double most = 0;
    for (int i = (int) (x - 0.4 * at.font()); i < x + 0.4 * at.font(); i++) {
      for (int j = (int) top; j < bottom; j++) {
        int rgb = image.getRGB(i, j);
        most = Math.max(most, Math.abs((rgb >> 16 & 255) - (rgb & 255)));
      }
    }
    return most;
  }

  @Test
  void whatComesNextIsStrongerThanWhatComesLaterAndThatThanWhatWasPlayed() {
    page.show(Marks.HIDDEN);
    for (int step = 0; step < 10; step++) {
      page.unnamed(0, step);
    }
    PageLayout at = PageLayout.of(WIDTH, HEIGHT, 44, page);
    BufferedImage image = picture(LEAD);
    // one figure only, so that its shape does not count
    List<Integer> fives =
        page.drill().route().steps().stream()
            .filter(step -> step.place().fret() == 5)
            .map(step -> step.index())
            .toList();
    double played = mean(image, at, fives, 0, 9);
    double next = mean(image, at, fives, 10, 13);
    double later = mean(image, at, fives, 14, 24);
    assertThat(next).isGreaterThan(1.3 * later);
    assertThat(later).isGreaterThan(1.1 * played);
    assertThat(played).isPositive();
  }

  private double mean(BufferedImage image, PageLayout at, List<Integer> steps, int from, int to) {
    return steps.stream()
        .filter(step -> step >= from && step <= to)
        .mapToDouble(step -> ink(image, at, step))
        .average()
        .orElseThrow();
  }

  @Test
  void figuresToPlayFromAreHalfAsLargeAgainAsBeforeWithTwoLinesInSight() {
    page.show(Marks.HIDDEN);
    PageLayout at = PageLayout.of(WIDTH, HEIGHT, 44, page);
    assertThat(at.font()).isGreaterThan(36);
    assertThat(at.linesPerSheet() * at.barsPerLine()).isGreaterThanOrEqualTo(2);
  }

  @Test
  void whatIsRightHasNoHueAndASlipHasMoreInkThanAnything() {
    PagedTake take =
        PagedTake.of(
            "slips",
            drill,
            PagedTake.performance(
                drill,
                List.of(
                    new Mistake.Slip(Mistake.Kind.WRONG, 9, OptionalInt.empty()),
                    new Mistake.Slip(Mistake.Kind.SKIP, 17, OptionalInt.empty())),
                3),
            false);
    page.review(take.review());
    assertThat(page.at(9).ink()).isEqualTo(PageModel.Ink.WRONG);
    assertThat(page.at(17).ink()).isEqualTo(PageModel.Ink.LEFT_OUT);
    PageLayout at = PageLayout.of(WIDTH, HEIGHT, 27, page);
    BufferedImage image = picture(0);
    double most = 0;
    for (int step = 0; step < page.steps(); step++) {
      assertThat(hue(image, at, step, page.barSteps())).as("hue of step " + step).isLessThan(20);
      if (page.at(step).ink() == PageModel.Ink.RIGHT) {
        most = Math.max(most, around(image, at, step));
      }
    }
    assertThat(around(image, at, 9)).as("wrong").isGreaterThan(1.2 * most);
    assertThat(around(image, at, 17)).as("left out").isGreaterThan(1.0 * most);
  }

  /** Darkest pixel of the arc over a step, 0 for paper to 1 for black, at its highest point. */
  private double arc(BufferedImage image, PageLayout at, int step) {
    double middle = at.x(step, page.barSteps()) - at.column() / 2;
    double highest =
        Math.min(
            page.step(step).place().string().number(),
            page.step(step - 1).place().string().number());
    double top = at.top(at.line(step, page.barSteps())) + (highest - 1) * at.stringGap();
    double most = 0;
    for (int j = (int) (top - 1.6 * at.font()); j < top - 0.9 * at.font(); j++) {
      most = Math.max(most, 1 - (image.getRGB((int) middle, j) >> 8 & 255) / 255.0);
    }
    return most;
  }

  @Test
  void landingThatWasNotReachedIsNeverDrawnAsMade() {
    PlannedShift up = drill.route().shifts().get(0);
    PlannedShift down = drill.route().shifts().get(drill.route().shifts().size() - 1);
    PageLayout at = PageLayout.of(WIDTH, HEIGHT, 27, page);
    page.show(Marks.SHOWN);
    for (int step = 0; step <= up.landingStep(); step++) {
      page.unnamed(0, step);
    }
    page.shifted(
        0,
        new ShiftSaid(up, ShiftVerdict.MADE, Optional.of(up.string()), OptionalDouble.of(0.99), 5));
    double made = arc(picture(LEAD), at, up.landingStep());
    assertThat(made).isGreaterThan(0.8);

    page.review(stoppedBefore(down.landingStep() - 2));
    assertThat(page.at(down.landingStep()).ink()).isEqualTo(PageModel.Ink.PALE);
    assertThat(arc(picture(LEAD), at, down.landingStep())).isBetween(0.1, 0.7 * made);

    // a count-in that was cancelled leaves a page that is all to come
    page.clear();
    page.show(Marks.HIDDEN);
    PageLayout large = PageLayout.of(WIDTH, HEIGHT, 44, page);
    assertThat(arc(picture(LEAD), large, up.landingStep())).isBetween(0.2, 0.85 * made);
  }

  private Review stoppedBefore(int step) {
    Performance whole = PagedTake.performance(drill, List.of(), 3);
    double end = whole.firstBeat() + (step - 0.2) * drill.pulse().slotSeconds();
    Run run =
        new Run(
            drill,
            Optional.empty(),
            whole.sampleRate(),
            OptionalDouble.of(whole.firstBeat()),
            Clock.MEASURED,
            verdict -> {});
    run.feed(whole.samples(), 0, (int) (end * whole.sampleRate()));
    return run.finish();
  }

  /** Ink on and beside a figure, with the signs about it. */
  private double around(BufferedImage image, PageLayout at, int step) {
    int line = at.line(step, page.barSteps());
    double x = at.x(step, page.barSteps());
    double y = at.top(line) + (page.step(step).place().string().number() - 1) * at.stringGap();
    double reach = 0.9 * at.font();
    double sum = 0;
    for (int i = (int) (x - reach); i <= x + reach; i++) {
      for (int j = (int) (y - reach); j <= y + 0.7 * reach; j++) {
        sum += 1 - (image.getRGB(i, j) >> 8 & 255) / 255.0;
      }
    }
    return sum;
  }
}
