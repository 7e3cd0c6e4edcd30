package neckway.desk.page;

import java.util.stream.Collectors;
import neckway.desk.Texts;
import neckway.page.PageModel;
import neckway.page.PageSign;

/** Tells each sign that stands on a page in the window, and none that does not. */
public final class PageLegend {
  private PageLegend() {}

  /** The signs of a page with what they mean. */
  public static String of(PageModel page) {
    return PageSign.on(page).stream()
        .map(PageLegend::words)
        .collect(Collectors.joining(Texts.of("page.legend.between")));
  }

  private static String words(PageSign sign) {
    return switch (sign) {
      case RIGHT -> Texts.of("page.legend.right");
      case WRONG -> Texts.of("page.legend.wrong");
      case LEFT_OUT -> Texts.of("page.legend.leftOut");
      case UNNAMED -> Texts.of("page.legend.unnamed");
      case TWICE -> Texts.of("page.legend.twice");
      case AHEAD -> Texts.of("page.legend.ahead");
      case PLANNED -> Texts.of("page.legend.planned");
      case NOT_AS_PLANNED -> Texts.of("page.legend.notAsPlanned");
      case STRAY -> Texts.of("page.legend.stray");
      case MORE_STRAYS -> Texts.of("page.legend.moreStrays");
      case LANDING -> Texts.of("page.legend.landing");
      case MOVED -> Texts.of("page.legend.moved");
      case UNHEARD -> Texts.of("page.legend.unheard");
      case UNPLAYED -> Texts.of("page.legend.unplayed");
      case TIME -> Texts.of("page.legend.time");
      case LANDED_LATE -> Texts.of("page.legend.landedLate");
      case TIME_UNSURE -> Texts.of("page.legend.timeUnsure");
    };
  }
}
