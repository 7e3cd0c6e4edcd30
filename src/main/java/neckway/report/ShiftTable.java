package neckway.report;

import java.util.List;
import neckway.hand.ShiftVerdict;
import neckway.review.CleanStretch;
import neckway.review.ReviewedShift;
import neckway.review.words.Phrases;
import neckway.words.Wording;

/** The shifts: what was planned, what was heard, how late each landed. */
final class ShiftTable {
  private static final int MOST_ROWS = 16;

  private final Told told;

  ShiftTable(Told told) {
    this.told = told;
  }

  void write(Markup out) {
    List<ReviewedShift> all = told.review.shifts();
    if (all.isEmpty()) {
      out.element("p", Wording.of("table.none"));
      return;
    }
    List<ReviewedShift> wanted =
        all.size() <= MOST_ROWS ? all : all.stream().filter(this::isTelling).toList();
    List<ReviewedShift> shown = wanted.subList(0, Math.min(MOST_ROWS, wanted.size()));
    if (shown.size() < all.size()) {
      out.element(
          "p",
          Wording.of(
              shown.isEmpty()
                  ? "table.many.fine"
                  : wanted.size() > shown.size() ? "table.many.first" : "table.many.all",
              all.size(),
              untold(all)),
          "class",
          "small");
    }
    if (shown.isEmpty()) {
      return;
    }
    out.open("table").open("thead").open("tr");
    List.of("shift", "planned", "heard", "landed")
        .forEach(head -> out.element("th", Wording.of("table.head." + head)));
    out.close().close().open("tbody");
    shown.forEach(shift -> row(out, shift));
    out.close().close();
    out.element(
        "p",
        Wording.of("table.howLate", Math.round(CleanStretch.latestMs(told.slotMs()))),
        "class",
        "small");
  }

  private static String untold(List<ReviewedShift> all) {
    long untold = all.stream().filter(s -> s.verdict() == ShiftVerdict.UNHEARD).count();
    return untold == 0 ? "" : Wording.of("table.untold", untold);
  }

  private boolean isTelling(ReviewedShift shift) {
    return shift.verdict() == ShiftVerdict.MOVED
        || shift.verdict() == ShiftVerdict.MISSED
        || !inTime(shift)
        || Moments.isDoubtful(shift);
  }

  private void row(Markup out, ReviewedShift shift) {
    var planned = shift.planned();
    String way = Wording.capital(Phrases.way(planned.direction()));
    out.open("tr");
    out.element(
        "td", told.drill.rounds() > 1 ? Wording.of("table.way", way, planned.round() + 1) : way);
    out.element("td", Phrases.string(planned.string()) + ", " + Phrases.finger(planned.finger()));
    out.open("td").text(heard(shift));
    if (Moments.isDoubtful(shift)) {
      out.text(" ").element("strong", Wording.of("table.listen"));
    }
    out.close();
    out.element("td", landed(shift));
    out.close();
  }

  private static String heard(ReviewedShift shift) {
    return switch (shift.verdict()) {
      case MADE -> Wording.of("table.made");
      case MOVED -> Wording.of("table.moved", Phrases.ordinal(shift.string().orElseThrow()));
      case MISSED -> Wording.of("table.missed");
      case UNHEARD -> Wording.of("table.unheard");
      case UNPLAYED -> Wording.of("table.unplayed");
    };
  }

  private boolean inTime(ReviewedShift shift) {
    return new CleanStretch(told.review).inTime(shift);
  }

  private String landed(ReviewedShift shift) {
    if (shift.lateMs().isEmpty()) {
      return "\u2013";
    }
    double lateMs = shift.lateMs().getAsDouble();
    String size = Phrases.ms(lateMs);
    String off = Wording.of(lateMs < 0 ? "table.early" : "table.late", size);
    return inTime(shift) ? Wording.of("table.inTime", off) : off;
  }
}
