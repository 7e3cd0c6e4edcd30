package neckway.desk.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import neckway.drill.PlayableDrill;
import neckway.page.PageModel;
import neckway.page.PageModelTests;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Whatever the size, every step has its place, inside the page, and is found again there. */
class PageLayoutTests {
  private final PageModel page = new PageModel(PageModelTests.drill());

  @ParameterizedTest
  @CsvSource({
    "1230, 500, 27",
    "1870, 800, 27",
    "900, 400, 20",
    "600, 260, 27",
    "1230, 500, 81",
    "200, 160, 27",
    "3000, 300, 27"
  })
  void everyStepIsInsideAndFoundAgain(double width, double height, double font) {
    PageLayout at = PageLayout.of(width, height, font, page);
    assertThat(at.to(at.lines() - 1, page)).isEqualTo(page.steps());
    for (int step = 0; step < page.steps(); step++) {
      int line = at.line(step, page.barSteps());
      double x = at.x(step, page.barSteps());
      assertThat(x - at.column() / 2).isGreaterThanOrEqualTo(0);
      assertThat(x + at.column() / 2).isLessThanOrEqualTo(width + 1e-6);
      assertThat(at.top(line)).isGreaterThan(0);
      assertThat(at.stepAt(x, at.top(line), at.sheet(line), page.barSteps(), page.steps()))
          .isEqualTo(step);
    }
  }

  /**
   * By hand: half a beat later with two notes a beat is a column, two bars later two bar numbers.
   */
  @ParameterizedTest
  @CsvSource({
    "1230, 500, 0.5, 1, 1",
    "1870, 800, 1.5, 3, 1",
    "200, 160, 3.5, 7, 1",
    "900, 400, 8.5, 1, 3",
    "3000, 300, 4, 0, 2"
  })
  void barsBeginWhereTheBeatsDoThoughTheFirstNoteComesLater(
      double width, double height, double beats, int lead, int firstBar) {
    PlayableDrill plain = PageModelTests.drill();
    PageModel later =
        new PageModel(plain.drill().withPulse(plain.pulse().withFeel(0.5, beats)).playable());
    assertThat(later.lead()).isEqualTo(lead);
    assertThat(later.firstBar()).isEqualTo(firstBar);
    PageLayout at = PageLayout.of(width, height, 27, later);
    int bar = later.barSteps();
    for (int step = 0; step < later.steps(); step++) {
      int line = at.line(step, bar);
      double columns = (at.x(step, bar) - at.left(line)) / at.column() - 0.5;
      long inLine = (long) (step + lead) - (long) line * bar * at.barsPerLine();
      assertThat(columns).as("step " + step).isCloseTo(inLine, within(1e-6));
      assertThat(inLine).isBetween(0L, (long) at.columns(line, later) - 1);
      assertThat(at.stepAt(at.x(step, bar), at.top(line), at.sheet(line), bar, later.steps()))
          .isEqualTo(step);
    }
    for (int line = 1; line < at.lines(); line++) {
      assertThat((at.from(line, bar) + lead) % bar).as("a line begins with a bar").isZero();
    }
  }

  @ParameterizedTest
  @CsvSource({"1230, 500", "1870, 800"})
  void wholeDrillIsOneSheetWithFiguresNoSmallerThanWanted(double width, double height) {
    PageLayout at = PageLayout.of(width, height, 27, page);
    assertThat(at.sheets()).isEqualTo(1);
    assertThat(at.font()).isGreaterThanOrEqualTo(27);
    assertThat(at.barsPerLine()).as("four bars, evenly").isEqualTo(2);
  }

  /** 25 notes, eight a bar: whatever the size, the last one has no line of its own. */
  @Test
  void theLastNoteHasNoLineOfItsOwn() {
    int folded = 0;
    for (int width = 200; width <= 3000; width += 70) {
      for (int height = 160; height <= 1400; height += 60) {
        PageLayout at = PageLayout.of(width, height, 27, page);
        int last = at.lines() - 1;
        assertThat(at.to(last, page) - at.from(last, 8)).isGreaterThan(1);
        double right = at.left(0) + at.columns(last, page) * at.column();
        assertThat(right).isLessThanOrEqualTo(width + 1e-6);
        folded += at.lines() * at.barsPerLine() < page.bars() ? 1 : 0;
      }
    }
    assertThat(folded).isPositive();
  }

  @Test
  void figureIsReadFromTwoMetres() {
    // an eye of 20/20 reads letters of 5 minutes of arc (ISO 8596, value from memory); one and a
    // half times that is asked of a digit, 0.72 of its font high, on a screen of 96 pixels an inch
    PageLayout at = PageLayout.of(1230, 500, 27, page);
    double digitMetres = 0.72 * at.font() / 96 * 0.0254;
    assertThat(60 * Math.toDegrees(Math.atan(digitMetres / 2))).isGreaterThan(1.5 * 5);
  }
}
