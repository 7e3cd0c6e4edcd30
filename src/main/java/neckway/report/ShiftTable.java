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
      out.element("p", "This drill stays in one shape, so it has no shifts.");
      return;
    }
    List<ReviewedShift> wanted =
        all.size() <= MOST_ROWS ? all : all.stream().filter(this::isTelling).toList();
    List<ReviewedShift> shown = wanted.subList(0, Math.min(MOST_ROWS, wanted.size()));
    if (shown.size() < all.size()) {
      out.element(
          "p",
          "There were "
              + all.size()
              + " shifts"
              + untold(all)
              + (shown.isEmpty()
                  ? ". None was heard to be made elsewhere, or to land late."
                  : ". Below are "
                      + (wanted.size() > shown.size() ? "the first " : "")
                      + "those that were not made as planned, or landed late."),
          "class",
          "small");
    }
    if (shown.isEmpty()) {
      return;
    }
    out.open("table").open("thead").open("tr");
    List.of("Shift", "Planned", "Heard", "Landed").forEach(head -> out.element("th", head));
    out.close().close().open("tbody");
    shown.forEach(shift -> row(out, shift));
    out.close().close();
    out.element(
        "p",
        "How late a hand landed is the time from the note before, less your usual time between"
            + " notes. Up to "
            + Math.round(CleanStretch.latestMs(told.slotMs()))
            + " ms is in time.",
        "class",
        "small");
  }

  private static String untold(List<ReviewedShift> all) {
    long untold = all.stream().filter(s -> s.verdict() == ShiftVerdict.UNHEARD).count();
    return untold == 0
        ? ""
        : ", of which the sound does not tell for " + untold + " on which string they were made";
  }

  private boolean isTelling(ReviewedShift shift) {
    return shift.verdict() == ShiftVerdict.MOVED
        || shift.verdict() == ShiftVerdict.MISSED
        || !inTime(shift)
        || Moments.isDoubtful(shift);
  }

  private void row(Markup out, ReviewedShift shift) {
    var planned = shift.planned();
    String round = told.drill.rounds() > 1 ? ", round " + (planned.round() + 1) : "";
    out.open("tr");
    out.element("td", Wording.capital(Phrases.way(planned.direction())) + round);
    out.element("td", Phrases.string(planned.string()) + ", " + Phrases.finger(planned.finger()));
    out.open("td").text(heard(shift));
    if (Moments.isDoubtful(shift)) {
      out.text(" ").element("strong", "please listen");
    }
    out.close();
    out.element("td", landed(shift));
    out.close();
  }

  private static String heard(ReviewedShift shift) {
    return switch (shift.verdict()) {
      case MADE -> "as planned";
      case MOVED -> "on the " + Phrases.string(shift.string().orElseThrow());
      case MISSED -> "not made: the hand stayed";
      case UNHEARD -> "the sound does not tell on which string";
      case UNPLAYED -> "not reached";
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
    return (lateMs < 0 ? size + " early" : size + " late") + (inTime(shift) ? ", in time" : "");
  }
}
