package neckway.desk.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import neckway.drill.Drills;
import neckway.hand.ShiftVerdict;
import neckway.neck.GuitarString;
import neckway.neck.Step;
import neckway.page.LandingMark;
import neckway.page.PageModel.Ink;
import neckway.page.PageStep;
import neckway.page.PlayedPlace;
import neckway.page.PlayedPlace.Known;
import neckway.page.TimeFigure;
import neckway.page.TimeFigure.Measure;
import neckway.review.Timing;
import org.junit.jupiter.api.Test;

/** What the window writes on the page, beside the labels that the terminal prints. */
class PageWordsTests {
  private final PageWords words = new PageWords();

  private void figure(TimeFigure time, String label, String drawn, String landed) {
    assertThat(time.label()).isEqualTo(label);
    assertThat(words.figure(time)).isEqualTo(drawn);
    assertThat(words.landed(time)).isEqualTo(landed);
  }

  @Test
  void figuresAreTheLabelsWithATypographicMinus() {
    Measure beat = Measure.OFF_THE_BEAT;
    figure(new TimeFigure(beat, -7.4, Timing.ON, -0.02), "-7", "\u22127", "");
    figure(new TimeFigure(beat, 0.2, Timing.ON, 0), "0", "0", "");
    figure(new TimeFigure(beat, 244.4, Timing.LATE, 0.6), "+244", "+244", "");
    figure(new TimeFigure(beat, 31, Timing.UNSURE, 0.1), "?", "?", "");
  }

  /** A landing's time is told even where its onset is not known finely, as in the sentence. */
  @Test
  void aLateLandingIsWrittenOutUnderItsFigure() {
    Measure landing = Measure.LANDED_LATE;
    figure(new TimeFigure(landing, 224.4, Timing.LATE, 0.6), "+220", "+220", "landed 220 ms late");
    figure(new TimeFigure(landing, 37.2, Timing.UNSURE, 0.1), "+37", "+37", "landed 37 ms late");
  }

  private void shift(ShiftVerdict verdict, String sign, String written) {
    LandingMark mark =
        new LandingMark(
            Drills.example().route().shifts().get(0),
            7,
            Optional.of(verdict),
            verdict == ShiftVerdict.MOVED ? Optional.of(new GuitarString(4)) : Optional.empty());
    assertThat(mark.sign()).isEqualTo(sign);
    assertThat(words.shift(mark)).isEqualTo(written);
  }

  @Test
  void whatBecameOfAShiftIsWrittenWhereItsArcDoesNotTell() {
    shift(ShiftVerdict.MADE, "^", "");
    shift(ShiftVerdict.MOVED, "^4", "on 4");
    shift(ShiftVerdict.UNHEARD, "^?", "?");
    shift(ShiftVerdict.UNPLAYED, ".^", "");
  }

  @Test
  void straysAreNamedAsInTheTerminalBehindAPlus() {
    Step due = Drills.example().route().steps().get(0);
    PageStep step =
        new PageStep(
            due,
            new PlayedPlace(Known.AS_PLANNED, due.place()),
            Ink.RIGHT,
            false,
            Optional.empty(),
            List.of("E4", "A2"),
            Optional.empty(),
            List.of());
    assertThat(step.strayLabel()).isEqualTo("E4+1");
    assertThat(words.strays(step)).isEqualTo("+E4+1");
  }
}
