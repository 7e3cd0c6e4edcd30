package neckway.page;

import java.util.List;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import neckway.hand.ShiftVerdict;
import neckway.page.PageModel.Ink;
import neckway.page.PlayedPlace.Known;
import neckway.page.TimeFigure.Measure;

/** A sort of sign that may stand on a page, to be told in its legend if it does. */
public enum PageSign {
  RIGHT(s -> s.ink() == Ink.RIGHT && s.played().known() != Known.NOT_AS_PLANNED),
  WRONG(s -> s.ink() == Ink.WRONG),
  LEFT_OUT(s -> s.ink() == Ink.LEFT_OUT),
  /** Heard, but not what it was. */
  UNNAMED(s -> s.ink() == Ink.UNNAMED),
  TWICE(PageStep::twice),
  /** A step that was not reached. */
  AHEAD(s -> s.ink() == Ink.PALE),
  /** A planned place, beside where the note was played. */
  PLANNED(s -> s.played().known() == Known.ELSEWHERE),
  /** A planned place, with its note played who knows where. */
  NOT_AS_PLANNED(s -> s.played().known() == Known.NOT_AS_PLANNED),
  STRAY(s -> !s.strays().isEmpty()),
  MORE_STRAYS(s -> s.strays().size() > 1),
  LANDING(s -> !s.landings().isEmpty()),
  MOVED(landing(ShiftVerdict.MOVED)),
  UNHEARD(landing(ShiftVerdict.UNHEARD)),
  UNPLAYED(landing(ShiftVerdict.UNPLAYED)),
  TIME(s -> s.time().isPresent()),
  LANDED_LATE(s -> s.time().filter(t -> t.measure() == Measure.LANDED_LATE).isPresent()),
  TIME_UNSURE(s -> s.timeLabel().equals("?"));

  private final Predicate<PageStep> at;

  PageSign(Predicate<PageStep> at) {
    this.at = at;
  }

  private static Predicate<PageStep> landing(ShiftVerdict verdict) {
    return s ->
        s.landings().stream().anyMatch(m -> m.verdict().filter(verdict::equals).isPresent());
  }

  /** The sorts of signs that stand on a page. */
  public static List<PageSign> on(PageModel page) {
    List<PageStep> steps = IntStream.range(0, page.steps()).mapToObj(page::at).toList();
    return Stream.of(values()).filter(sign -> steps.stream().anyMatch(sign.at)).toList();
  }
}
