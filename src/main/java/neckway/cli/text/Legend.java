package neckway.cli.text;

import java.io.PrintWriter;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import neckway.page.PageModel;
import neckway.page.PageSign;

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
      case RIGHT -> "7 right";
      case WRONG -> "7x wrong, with the fret or note heard below";
      case LEFT_OUT -> "(7) left out";
      case UNNAMED -> "7? played, what it was is not known";
      case TWICE -> "7\" struck twice";
      case AHEAD -> ".7 not reached";
      case PLANNED -> ":7 planned here, played on the other string in its column";
      case NOT_AS_PLANNED -> ":7? right, but not played here as planned; where is not known";
      case STRAY -> "stray: a note that belongs to no step";
      case MORE_STRAYS -> "E4+1: and one more";
      case LANDING -> "^ and v: where a shift lands";
      case MOVED -> "^4: made on string 4, not where it was planned";
      case UNHEARD -> "^?: the sound does not tell on which string";
      case UNPLAYED -> ".^: not reached";
      case TIME -> "ms: off the beat, - early, + late";
      case LANDED_LATE -> "under a landing that was late, how late it landed";
      case TIME_UNSURE -> "?: cannot be told exactly";
    };
  }
}
