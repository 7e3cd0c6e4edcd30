package neckway.desk.page;

import neckway.desk.Texts;
import neckway.hand.ShiftVerdict;
import neckway.page.LandingMark;
import neckway.page.PageModel;
import neckway.page.PageStep;
import neckway.page.PlayedPlace;
import neckway.page.TimeFigure;
import neckway.page.TimeFigure.Measure;
import neckway.review.HeardAs;

/** The few words that stand on the page. */
public final class PageWords {
  String hand(int fret) {
    return Texts.of("page.hand", fret);
  }

  /** What became of a shift, where its arc alone does not tell. */
  String shift(LandingMark mark) {
    return switch (mark.verdict().orElse(ShiftVerdict.UNPLAYED)) {
      case MOVED -> Texts.of("page.moved", mark.movedTo().orElseThrow());
      case UNHEARD -> Texts.of("page.unheard");
      case MADE, MISSED, UNPLAYED -> "";
    };
  }

  /** Notes that belong to no step. */
  String strays(PageStep step) {
    return "+" + step.strayLabel();
  }

  /** Milliseconds with their sign. */
  String figure(TimeFigure time) {
    return time.told() ? signed(time.shownMs()) : time.label();
  }

  /** How late a shift landed, where it is said to be late. */
  String landed(TimeFigure time) {
    return time.measure() == Measure.LANDED_LATE ? Texts.of("page.late", time.shownMs()) : "";
  }

  /** A number with its sign; the minus is a real one. */
  public static String signed(long number) {
    return number > 0 ? "+" + number : number < 0 ? "\u2212" + -number : "0";
  }

  private static String wrong(HeardAs heard) {
    return Texts.of(
        heard.fret().isPresent() ? "page.says.wrong.fret" : "page.says.wrong", heard.label());
  }

  private static String right(PlayedPlace played) {
    return switch (played.known()) {
      case AS_PLANNED -> Texts.of("page.says.right");
      case ELSEWHERE ->
          Texts.of(
              "page.says.elsewhere",
              Texts.ordinal(played.place().string().number()),
              played.place().fret());
      case NOT_AS_PLANNED -> Texts.of("page.says.notAsPlanned");
    };
  }

  private static String time(TimeFigure time) {
    long ms = time.shownMs();
    if (time.measure() == Measure.LANDED_LATE) {
      return Texts.of("page.says.landed", ms);
    }
    return switch (time.timing()) {
      case ON -> Texts.of("page.says.on", signed(ms));
      case EARLY -> Texts.of("page.says.early", -ms);
      case LATE -> Texts.of("page.says.late", ms);
      case UNSURE -> Texts.of("page.says.unsure");
    };
  }

  /** A step in words, for the line under the page and for a screen reader. */
  public String spoken(PageModel page, int step) {
    PageStep at = page.at(step);
    String place =
        Texts.of(
            "page.place",
            step + 1,
            Texts.ordinal(at.due().place().string().number()),
            at.due().place().fret(),
            at.due().finger());
    String verdict =
        switch (at.ink()) {
          case PALE -> Texts.of("page.says.pale");
          case RIGHT -> right(at.played());
          case WRONG -> wrong(at.heard().orElseThrow());
          case LEFT_OUT -> Texts.of("page.says.leftOut");
          case UNNAMED -> Texts.of("page.says.unnamed");
        };
    String twice = at.twice() ? Texts.of("page.says.twice") : "";
    String strays =
        at.strays().isEmpty() ? "" : Texts.of("page.says.strays", String.join(", ", at.strays()));
    return place + verdict + twice + strays + at.time().map(PageWords::time).orElse("");
  }
}
