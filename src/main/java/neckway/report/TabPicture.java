package neckway.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import neckway.follow.Verdict;
import neckway.page.PageModel.Ink;
import neckway.page.PageSign;
import neckway.page.PageStep;
import neckway.words.Wording;

/**
 * The page of the run as tab, in small pictures of a bar or a part of one, so that a narrow screen
 * shows them one below the other at full size.
 */
final class TabPicture {
  private static final int MOST_COLUMNS = 8;

  /** More pictures do not fit two pages of paper; then only those with something in them stand. */
  private static final int MOST_PICTURES = 12;

  private static final double COLUMN = 36;
  private static final double LEFT = 20;
  private static final double ROW = 19;
  private static final double TOP = 34;
  private static final double MARK = 8.5;

  private final Told told;
  private final int columns;

  TabPicture(Told told) {
    this.told = told;
    columns = columns(told.page.barSteps());
  }

  /** A bar, the longest equal part of one that is not too wide, or two of short ones. */
  private static int columns(int barSteps) {
    if (2 * barSteps <= MOST_COLUMNS) {
      return 2 * barSteps;
    }
    return IntStream.rangeClosed(1, MOST_COLUMNS)
        .filter(columns -> barSteps % columns == 0)
        .max()
        .orElse(MOST_COLUMNS);
  }

  void write(Markup out) {
    List<Integer> all = new ArrayList<>();
    for (int from = 0; from < told.page.steps(); from = end(from)) {
      all.add(from);
    }
    boolean tooMany = all.size() > MOST_PICTURES;
    List<Integer> wanted = tooMany ? all.stream().filter(this::isTelling).toList() : all;
    if (wanted.isEmpty()) {
      String none = Wording.of("tab.none", told.page.bars());
      out.element("p", none, "class", "small");
      return;
    }
    List<Integer> shown = wanted.subList(0, Math.min(MOST_PICTURES, wanted.size()));
    if (tooMany) {
      out.element(
          "p",
          Wording.of(
              shown.size() < wanted.size() ? "tab.some.first" : "tab.some", told.page.bars()),
          "class",
          "small");
    }
    out.open("div", "class", "tab");
    shown.forEach(from -> picture(out, from));
    out.close();
    out.element("p", legend(), "class", "small");
  }

  /** Where the picture from a step ends: one step left over, the bottom note, goes with it. */
  private int end(int from) {
    int to = from + columns;
    return to + 1 >= told.page.steps() ? told.page.steps() : to;
  }

  /** Whether a slip or a shift that was not simply made lies in a stretch. */
  private boolean isTelling(int from) {
    return IntStream.range(from, end(from))
        .anyMatch(
            step -> {
              PageStep at = told.page.at(step);
              return at.ink() != Ink.RIGHT && at.ink() != Ink.PALE
                  || at.twice()
                  || !at.strays().isEmpty()
                  || at.played().elsewhere().isPresent()
                  || told.overruled(step).isPresent();
            });
  }

  private void picture(Markup out, int from) {
    int to = end(from);
    int strings = told.page.strings();
    double width = LEFT + COLUMN * (to - from) + 4;
    double bottom = TOP + ROW * (strings - 1);
    double height = bottom + 44;
    out.open(
        "svg",
        "viewBox",
        "0 0 " + Markup.length(width) + " " + Markup.length(height),
        "width",
        Markup.length(width),
        "height",
        Markup.length(height),
        "role",
        "img");
    out.element("title", Wording.of("tab.spoken", from + 1, to, spoken(from, to)));
    if (told.page.steps() > MOST_PICTURES * columns) {
      String bar =
          Wording.of(
              "tab.bar", told.page.firstBar() + (from + told.page.lead()) / told.page.barSteps());
      write(out, LEFT + COLUMN / 2, 9, "label", bar);
    }
    for (int s = 1; s <= strings; s++) {
      double y = y(s);
      out.element("text", told.openNote(s), "x", "8", "y", Markup.length(y + 4), "class", "label");
      out.empty(
          "line",
          "x1",
          Markup.length(LEFT),
          "x2",
          Markup.length(width),
          "y1",
          Markup.length(y),
          "y2",
          Markup.length(y),
          "class",
          "string");
    }
    for (int step = from; step < to; step++) {
      if ((step + told.page.lead()) % told.page.barSteps() == 0) {
        String x = Markup.length(LEFT + COLUMN * (step - from));
        out.empty(
            "line",
            "x1",
            x,
            "x2",
            x,
            "y1",
            Markup.length(TOP),
            "y2",
            Markup.length(bottom),
            "class",
            "bar");
      }
      column(out, step, LEFT + COLUMN * (step - from + 0.5), bottom);
    }
    out.close();
  }

  private static double y(int string) {
    return TOP + ROW * (string - 1);
  }

  private void column(Markup out, int step, double x, double bottom) {
    PageStep at = told.page.at(step);
    double y = y(at.played().place().string().number());
    Optional<Verdict> teacher = told.overruled(step);
    String sign = teacher.map(verdict -> sign(at, verdict)).orElse(at.sign());
    boolean wrong = sign.contains("x");
    boolean leftOut = sign.contains("(");
    double half = Math.max(MARK, 4.4 * sign.length());
    out.empty(
        "rect",
        "x",
        Markup.length(x - half),
        "y",
        Markup.length(y - MARK),
        "width",
        Markup.length(2 * half),
        "height",
        Markup.length(2 * MARK),
        "rx",
        wrong ? "0" : Markup.length(MARK),
        "class",
        wrong ? "wrong" : leftOut ? "leftout" : at.twice() ? "twice" : "plain");
    write(out, x, y + 4.5, wrong ? "sign bad" : "sign", sign);
    if (!at.plannedSign().isEmpty()) {
      write(out, x, y(at.due().place().string().number()) + 4, "label", at.plannedSign());
    }
    write(out, x, 22, "label strong", at.landingSign());
    write(out, x, bottom + 22, "label strong", below(at, teacher));
    write(out, x, bottom + 38, "label", at.timeLabel().replace('-', '\u2212'));
  }

  /** What the teacher says of a note, in the signs of the page. */
  private static String sign(PageStep at, Verdict verdict) {
    String fret = Integer.toString(at.played().place().fret());
    return switch (verdict) {
      case RIGHT -> fret + "T";
      case WRONG -> fret + "xT";
      case REPEAT -> fret + "\"T";
      case EXTRA -> "(" + fret + ")T";
    };
  }

  private static String below(PageStep at, Optional<Verdict> teacher) {
    String heard = teacher.isPresent() ? "" : at.heardLabel();
    String stray = at.strays().isEmpty() ? "" : "+" + at.strayLabel();
    return heard + stray;
  }

  private static void write(Markup out, double x, double y, String kind, String text) {
    if (!text.isEmpty()) {
      out.element("text", text, "x", Markup.length(x), "y", Markup.length(y), "class", kind);
    }
  }

  private String spoken(int from, int to) {
    return IntStream.range(from, to)
        .mapToObj(
            step -> {
              PageStep at = told.page.at(step);
              return Wording.of(
                  "tab.place",
                  at.played().place().string(),
                  told.overruled(step).map(verdict -> sign(at, verdict)).orElse(at.sign()));
            })
        .collect(Collectors.joining(", "));
  }

  private String legend() {
    List<String> signs =
        new ArrayList<>(PageSign.on(told.page).stream().map(TabPicture::words).toList());
    boolean teacher =
        IntStream.range(0, told.page.steps()).anyMatch(s -> told.overruled(s).isPresent());
    if (teacher) {
      signs.add(Wording.of("tab.sign.teacher"));
    }
    return String.join("; ", signs) + ".";
  }

  private static String words(PageSign sign) {
    return switch (sign) {
      case RIGHT -> Wording.of("tab.sign.right");
      case WRONG -> Wording.of("tab.sign.wrong");
      case LEFT_OUT -> Wording.of("tab.sign.leftOut");
      case UNNAMED -> Wording.of("tab.sign.unnamed");
      case TWICE -> Wording.of("tab.sign.twice");
      case AHEAD -> Wording.of("tab.sign.ahead");
      case PLANNED -> Wording.of("tab.sign.planned");
      case NOT_AS_PLANNED -> Wording.of("tab.sign.notAsPlanned");
      case STRAY -> Wording.of("tab.sign.stray");
      case MORE_STRAYS -> Wording.of("tab.sign.moreStrays");
      case LANDING -> Wording.of("tab.sign.landing");
      case MOVED -> Wording.of("tab.sign.moved");
      case UNHEARD -> Wording.of("tab.sign.unheard");
      case UNPLAYED -> Wording.of("tab.sign.unplayed");
      case TIME -> Wording.of("tab.sign.time");
      case LANDED_LATE -> Wording.of("tab.sign.landedLate");
      case TIME_UNSURE -> Wording.of("tab.sign.timeUnsure");
    };
  }
}
