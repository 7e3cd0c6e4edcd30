package neckway.desk.page;

import neckway.desk.Texts;
import neckway.hand.ShiftVerdict;
import neckway.page.PageModel;

/** The few words that stand on the page. */
public final class PageWords {
  private static final double WORTH_SAYING_MS = 30;

  String hand(int fret) {
    return Texts.of("page.hand", fret);
  }

  String shift(ShiftVerdict verdict, String madeOn) {
    return switch (verdict) {
      case MOVED -> Texts.of("page.moved", madeOn);
      case MISSED -> Texts.of("page.missed");
      case UNHEARD -> Texts.of("page.unheard");
      case MADE, UNPLAYED -> "";
    };
  }

  /** Milliseconds off the beat, with their sign. */
  String off(PageModel page, int step) {
    return page.fine(step) ? signed(Math.round(page.offMs(step))) : "?";
  }

  /** How late a shift landed, where it is worth a word. */
  String landed(PageModel page, int step) {
    return page.lateMs(step)
        .filter(late -> Math.abs(late) >= WORTH_SAYING_MS)
        .map(late -> Texts.of(late > 0 ? "page.late" : "page.early", Math.round(Math.abs(late))))
        .orElse("");
  }

  /** A number with its sign; the minus is a real one. */
  public static String signed(long number) {
    return number > 0 ? "+" + number : number < 0 ? "\u2212" + -number : "0";
  }

  private static String wrong(String heard) {
    return Character.isDigit(heard.charAt(0))
        ? Texts.of("page.says.wrong.fret", heard)
        : Texts.of("page.says.wrong", heard);
  }

  /** A step in words, for the line under the page and for a screen reader. */
  public String spoken(PageModel page, int step) {
    String place =
        Texts.of(
            "page.place",
            step + 1,
            Texts.ordinal(page.step(step).place().string().number()),
            page.step(step).place().fret(),
            page.step(step).finger());
    String verdict =
        switch (page.ink(step)) {
          case PALE -> Texts.of("page.says.pale");
          case RIGHT -> Texts.of("page.says.right");
          case WRONG -> wrong(page.heard(step));
          case LEFT_OUT -> Texts.of("page.says.leftOut");
          case UNNAMED -> Texts.of("page.says.unnamed");
        };
    String twice = page.twice(step) ? Texts.of("page.says.twice") : "";
    String strays =
        page.strays(step).isEmpty() ? "" : Texts.of("page.says.strays", page.strays(step));
    String time = "";
    if (page.timed(step)) {
      long ms = Math.round(page.offMs(step));
      time =
          switch (page.timing(step)) {
            case ON -> Texts.of("page.says.on", signed(ms));
            case EARLY -> Texts.of("page.says.early", -ms);
            case LATE -> Texts.of("page.says.late", ms);
            case UNSURE -> Texts.of("page.says.unsure");
          };
    }
    return place + verdict + twice + strays + time;
  }
}
