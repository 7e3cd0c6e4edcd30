package neckway.report;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import neckway.page.PageStep;
import neckway.page.TimeFigure;
import neckway.page.TimeFigure.Measure;
import neckway.review.CleanStretch;
import neckway.review.ReviewedNote;
import neckway.words.Wording;

/** How each note lay in time, along the run. */
final class TimePicture {
  private static final double LEFT = 52;

  /** What is wider is not made to fit a phone, but moved sideways under the finger. */
  private static final double MOST_PHONE = 460;

  private static final double TOP = 12;
  private static final double HEIGHT = 150;
  private static final double STEP = 13;
  private static final double LEAST_WIDTH = 320;
  private static final double MOST_WIDTH = 720;

  /** The picture reaches so far beyond the clean band. */
  private static final double BANDS_SHOWN = 2.5;

  /**
   * One note.
   *
   * @param step index
   * @param offMs off the beat, early is negative
   * @param told whether the onset is known finely
   * @param landing whether a shift lands on it
   */
  private record Point(int step, double offMs, boolean told, boolean landing) {}

  private final Told told;
  private final List<Point> points = new ArrayList<>();
  private final double middleMs;
  private final double cleanMs;
  private final double mostMs;

  TimePicture(Told told) {
    this.told = told;
    for (int step = 0; step < told.page.steps(); step++) {
      PageStep at = told.page.at(step);
      if (at.time().isPresent()) {
        points.add(point(step, at, at.time().get()));
      }
    }
    middleMs = told.review.summary().offMsMedian().orElse(0);
    cleanMs = CleanStretch.widestMs(told.slotMs());
    mostMs = Math.abs(middleMs) + BANDS_SHOWN * cleanMs;
  }

  private Point point(int step, PageStep at, TimeFigure time) {
    double offMs = time.measure() == Measure.LANDED_LATE ? time.slots() * told.slotMs() : time.ms();
    return new Point(step, offMs, time.told(), !at.landings().isEmpty());
  }

  void write(Markup out) {
    if (points.isEmpty()) {
      out.element(
          "p",
          told.review.notes().stream().noneMatch(ReviewedNote::inPlace)
              ? Wording.of("time.none")
              : Wording.of("time.noBeat"));
      return;
    }
    out.element("p", words());
    double across = STEP * told.page.steps();
    double width = Math.max(LEAST_WIDTH, Math.min(MOST_WIDTH, LEFT + across + 8));
    double unit = (width - LEFT - 8) / told.page.steps();
    out.open("div", "class", "wide");
    out.open(
        "svg",
        "viewBox",
        "0 0 " + Markup.length(width) + " " + Markup.length(HEIGHT + 2 * TOP),
        "width",
        Markup.length(width),
        "height",
        Markup.length(HEIGHT + 2 * TOP),
        "class",
        width > MOST_PHONE ? "long" : "short",
        "role",
        "img");
    out.element("title", spoken());
    out.empty(
        "rect",
        "x",
        Markup.length(LEFT),
        "y",
        Markup.length(y(middleMs + cleanMs)),
        "width",
        Markup.length(width - LEFT),
        "height",
        Markup.length(y(middleMs - cleanMs) - y(middleMs + cleanMs)),
        "class",
        "band");
    axis(out, width, 0, Wording.of("time.beat"));
    label(out, y(mostMs) + 8, Wording.of("time.late"));
    label(out, y(-mostMs), Wording.of("time.early"));
    label(
        out, y(middleMs + cleanMs) + (middleMs + cleanMs > 12 ? 4 : -2), shown(middleMs + cleanMs));
    if (middleMs - cleanMs < -12) {
      label(out, y(middleMs - cleanMs) + 4, shown(middleMs - cleanMs));
    }
    for (Point point : points) {
      draw(out, point, LEFT + unit * (point.step() + 0.5));
    }
    out.close();
    out.close();
    out.element("p", Wording.of("time.legend"), "class", "small");
  }

  /** In the picture late is above. */
  private double y(double offMs) {
    double held = Math.max(-mostMs, Math.min(mostMs, offMs));
    return TOP + HEIGHT / 2 * (1 - held / mostMs);
  }

  private void axis(Markup out, double width, double offMs, String name) {
    String y = Markup.length(y(offMs));
    out.empty(
        "line",
        "x1",
        Markup.length(LEFT),
        "x2",
        Markup.length(width),
        "y1",
        y,
        "y2",
        y,
        "class",
        "bar");
    label(out, y(offMs) + 4, name);
  }

  private static void label(Markup out, double y, String text) {
    out.element("text", text, "x", "26", "y", Markup.length(y), "class", "label");
  }

  private void draw(Markup out, Point point, double x) {
    double y = y(point.offMs());
    if (Math.abs(point.offMs()) > mostMs) {
      boolean late = point.offMs() > 0;
      double tip = late ? -6 : 6;
      out.empty(
          "path",
          "d",
          "M"
              + Markup.length(x - 5)
              + " "
              + Markup.length(y - tip / 2)
              + " L"
              + Markup.length(x)
              + " "
              + Markup.length(y + tip)
              + " L"
              + Markup.length(x + 5)
              + " "
              + Markup.length(y - tip / 2)
              + " Z",
          "class",
          "point");
      double beside = late ? y + 16 : y - 8;
      out.element(
          "text",
          shown(point.offMs()),
          "x",
          Markup.length(Math.max(LEFT + 14, x)),
          "y",
          Markup.length(beside),
          "class",
          "label");
      return;
    }
    if (point.landing()) {
      out.empty(
          "path",
          "d",
          "M"
              + Markup.length(x)
              + " "
              + Markup.length(y - 6)
              + " L"
              + Markup.length(x + 6)
              + " "
              + Markup.length(y)
              + " L"
              + Markup.length(x)
              + " "
              + Markup.length(y + 6)
              + " L"
              + Markup.length(x - 6)
              + " "
              + Markup.length(y)
              + " Z",
          "class",
          point.told() ? "point" : "ring");
      return;
    }
    out.empty(
        "circle",
        "cx",
        Markup.length(x),
        "cy",
        Markup.length(y),
        "r",
        "3.6",
        "class",
        point.told() ? "point" : "ring");
  }

  private static String shown(double ms) {
    long whole = Math.round(ms);
    return whole > 0 ? "+" + whole : whole < 0 ? "\u2212" + -whole : "0";
  }

  private String words() {
    OptionalDouble spread = told.review.summary().offMsSpread();
    String clean = Wording.of("time.clean", Math.round(cleanMs));
    return spread.isEmpty()
        ? clean
        : clean + " " + Wording.of("time.spread", Math.round(spread.getAsDouble()));
  }

  private String spoken() {
    return Wording.of(
        "time.spoken",
        points.stream().map(p -> shown(p.offMs())).collect(Collectors.joining(", ")));
  }
}
