package neckway.report;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import neckway.follow.Verdict;
import neckway.neck.Place;
import neckway.neck.Step;
import neckway.page.PageModel.Ink;
import neckway.page.PageStep;
import neckway.words.Wording;

/** The stretch of the neck that the drill lies on, with what happened where. */
final class NeckPicture {
  private static final double FRET = 42;
  private static final double ROW = 26;
  private static final double LEFT = 44;

  /** What is wider is not made to fit a phone, but moved sideways under the finger. */
  private static final double MOST_PHONE = 460;

  private static final double TOP = 16;
  private static final double DOT = 10;

  /** How often what happened in one place. */
  private static final class Happened {
    private final Set<String> landings = new TreeSet<>();
    private int slips;
    private boolean reached;

    /** Its mark: what happened there most plainly. */
    String mark() {
      if (!reached) {
        return "";
      }
      return slips == 0 ? "ok" : slips == 1 ? "x" : slips + "x";
    }
  }

  private final Told told;
  private final Map<Place, Happened> places = new LinkedHashMap<>();
  private final int first;
  private final int last;

  NeckPicture(Told told) {
    this.told = told;
    for (Step step : told.drill.route().steps()) {
      gather(told.page.at(step.index()));
    }
    int[] frets = places.keySet().stream().mapToInt(Place::fret).toArray();
    first = Math.max(1, IntStream.of(frets).min().orElseThrow() - 1);
    last = Math.min(told.drill.frets(), IntStream.of(frets).max().orElseThrow() + 1);
  }

  private void gather(PageStep at) {
    Happened here = places.computeIfAbsent(at.played().place(), place -> new Happened());
    boolean slip =
        at.ink() == Ink.WRONG || at.ink() == Ink.LEFT_OUT || at.twice() || !at.strays().isEmpty();
    int step = at.due().index();
    if (!at.landings().isEmpty()) {
      here.landings.add(at.landingSign());
    }
    here.reached |= at.ink() != Ink.PALE;
    here.slips += told.overruled(step).map(v -> v != Verdict.RIGHT).orElse(slip) ? 1 : 0;
    if (at.played().elsewhere().isPresent()) {
      places.computeIfAbsent(at.due().place(), place -> new Happened());
    }
  }

  void write(Markup out) {
    int strings = told.drill.tuning().count();
    double width = LEFT + FRET * (last - first + 1) + 8;
    double bottom = TOP + ROW * (strings - 1);
    out.open("div", "class", "wide");
    out.open(
        "svg",
        "viewBox",
        "0 0 " + Markup.length(width) + " " + Markup.length(bottom + 34),
        "width",
        Markup.length(width),
        "height",
        Markup.length(bottom + 34),
        "class",
        width > MOST_PHONE ? "long" : "short",
        "role",
        "img");
    out.element("title", spoken());
    for (int s = 1; s <= strings; s++) {
      String y = Markup.length(y(s));
      String note = told.openNote(s);
      out.element("text", note, "x", "8", "y", Markup.length(y(s) + 4), "class", "label");
      line(out, LEFT - 14, width - 4, y, y, "string");
    }
    for (int fret = first - 1; fret <= last; fret++) {
      double x = LEFT + FRET * (fret - first + 1);
      String kind = fret == 0 ? "nut" : "fret";
      line(out, x, x, Markup.length(TOP), Markup.length(bottom), kind);
      if (fret >= first) {
        out.element(
            "text",
            Integer.toString(fret),
            "x",
            Markup.length(x - FRET / 2),
            "y",
            Markup.length(bottom + 28),
            "class",
            "label");
      }
    }
    places.forEach((place, happened) -> dot(out, place, happened));
    out.close();
    out.close();
    out.element("p", Wording.of("neck.legend"), "class", "small");
  }

  private static void line(Markup out, double x1, double x2, String y1, String y2, String kind) {
    out.empty(
        "line",
        "x1",
        Markup.length(x1),
        "x2",
        Markup.length(x2),
        "y1",
        y1,
        "y2",
        y2,
        "class",
        kind);
  }

  private static double y(int string) {
    return TOP + ROW * (string - 1);
  }

  private double x(Place place) {
    return place.fret() == 0 ? LEFT - 14 : LEFT + FRET * (place.fret() - first + 0.5);
  }

  private void dot(Markup out, Place place, Happened happened) {
    double x = x(place);
    double y = y(place.string().number());
    boolean slipped = happened.slips > 0;
    out.empty(
        "rect",
        "x",
        Markup.length(x - DOT),
        "y",
        Markup.length(y - DOT),
        "width",
        Markup.length(2 * DOT),
        "height",
        Markup.length(2 * DOT),
        "rx",
        slipped ? "0" : Markup.length(DOT),
        "class",
        slipped ? "wrong" : happened.reached ? "right" : "leftout");
    if (!happened.mark().isEmpty()) {
      String kind = slipped ? "label bad" : "label";
      out.element(
          "text", happened.mark(), "x", Markup.length(x), "y", Markup.length(y + 4), "class", kind);
    }
    if (!happened.landings.isEmpty()) {
      String beside = Markup.length(x + DOT + 9);
      String signs = String.join(" ", happened.landings);
      out.element("text", signs, "x", beside, "y", Markup.length(y - 4), "class", "label strong");
    }
  }

  private String spoken() {
    List<String> slips =
        places.entrySet().stream()
            .filter(e -> e.getValue().slips > 0)
            .map(e -> Wording.of("neck.place", e.getKey().string(), e.getKey().fret()))
            .toList();
    return slips.isEmpty()
        ? Wording.of("neck.clean")
        : Wording.of("neck.slips", String.join(", ", slips));
  }
}
