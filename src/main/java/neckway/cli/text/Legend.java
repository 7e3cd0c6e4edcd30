package neckway.cli.text;

import java.io.PrintWriter;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import neckway.page.PageModel;
import neckway.page.PageSign;
import neckway.words.Wording;

/** Tells each sign that stands on a page, and none that does not. */
final class Legend {
  /** What a sign is about; each has a line of its own. */
  private enum About {
    NOTE,
    SHIFT,
    TIME
  }

  private final List<PageSign> signs;

  Legend(PageModel page) {
    signs = PageSign.on(page);
  }

  List<String> lines(int width) {
    return Stream.of(About.values())
        .map(this::told)
        .filter(line -> !line.isEmpty())
        .flatMap(line -> Wrapped.proseLines(line + ".", width).stream())
        .toList();
  }

  void print(PrintWriter out, int width) {
    lines(width).forEach(out::println);
  }

  private String told(About about) {
    return signs.stream()
        .filter(sign -> about(sign) == about)
        .map(Legend::words)
        .collect(Collectors.joining("; "));
  }

  private static About about(PageSign sign) {
    return switch (sign) {
      case RIGHT,
          WRONG,
          LEFT_OUT,
          UNNAMED,
          TWICE,
          AHEAD,
          PLANNED,
          NOT_AS_PLANNED,
          STRAY,
          MORE_STRAYS ->
          About.NOTE;
      case LANDING, MOVED, UNHEARD, UNPLAYED -> About.SHIFT;
      case TIME, LANDED_LATE, TIME_UNSURE -> About.TIME;
    };
  }

  private static String words(PageSign sign) {
    return switch (sign) {
      case RIGHT -> Wording.of("terminal.sign.right");
      case WRONG -> Wording.of("terminal.sign.wrong");
      case LEFT_OUT -> Wording.of("terminal.sign.leftOut");
      case UNNAMED -> Wording.of("terminal.sign.unnamed");
      case TWICE -> Wording.of("terminal.sign.twice");
      case AHEAD -> Wording.of("terminal.sign.ahead");
      case PLANNED -> Wording.of("terminal.sign.planned");
      case NOT_AS_PLANNED -> Wording.of("terminal.sign.notAsPlanned");
      case STRAY -> Wording.of("terminal.sign.stray", Wording.of("terminal.row.stray"));
      case MORE_STRAYS -> Wording.of("terminal.sign.moreStrays");
      case LANDING -> Wording.of("terminal.sign.landing");
      case MOVED -> Wording.of("terminal.sign.moved");
      case UNHEARD -> Wording.of("terminal.sign.unheard");
      case UNPLAYED -> Wording.of("terminal.sign.unplayed");
      case TIME -> Wording.of("terminal.sign.time");
      case LANDED_LATE -> Wording.of("terminal.sign.landedLate");
      case TIME_UNSURE -> Wording.of("terminal.sign.timeUnsure");
    };
  }
}
