package neckway.review.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import neckway.drill.PlayableDrill;
import neckway.hand.ShiftVerdict;
import neckway.neck.Direction;
import neckway.neck.PlannedShift;
import neckway.review.Review;
import neckway.review.ReviewedShift;

/** Says on which strings the hand moved, as far as the sound tells. */
final class ShiftStrings {
  private static final int MOST_NAMED = 3;

  private final PlayableDrill drill;
  private final Review review;

  ShiftStrings(PlayableDrill drill, Review review) {
    this.drill = drill;
    this.review = review;
  }

  List<String> sentences() {
    List<String> said = new ArrayList<>();
    List<ReviewedShift> moved = of(ShiftVerdict.MOVED);
    for (ReviewedShift shift : moved.subList(0, Math.min(MOST_NAMED, moved.size()))) {
      said.add(moved(shift));
    }
    if (moved.size() > MOST_NAMED) {
      int more = moved.size() - MOST_NAMED;
      said.add(
          Phrases.sentence(Phrases.count(more))
              + " more "
              + (more == 1 ? "shift was" : "shifts were")
              + " made on another string than planned; see the list.");
    }
    made().ifPresent(said::add);
    return said;
  }

  /** What to do first about a shift made elsewhere. */
  Optional<String> first() {
    return of(ShiftVerdict.MOVED).stream()
        .findFirst()
        .map(ReviewedShift::planned)
        .map(
            planned ->
                "First: play the shift "
                    + Phrases.way(planned.direction())
                    + " on the "
                    + Phrases.string(planned.string())
                    + " alone, its three notes, the "
                    + Phrases.finger(planned.finger())
                    + " landing on fret "
                    + drill.route().steps().get(planned.landingStep()).place().fret()
                    + ", until the hand goes there by itself.");
  }

  private List<ReviewedShift> of(ShiftVerdict verdict) {
    return review.shifts().stream().filter(s -> s.verdict() == verdict).toList();
  }

  private String moved(ReviewedShift shift) {
    PlannedShift planned = shift.planned();
    return "You moved "
        + Phrases.way(planned.direction())
        + pair(planned)
        + " on the "
        + Phrases.string(shift.string().orElseThrow())
        + inRound(planned)
        + ", not on the "
        + Phrases.string(planned.string())
        + " that you planned.";
  }

  private Optional<String> made() {
    int made = of(ShiftVerdict.MADE).size();
    if (made == 0) {
      return Optional.empty();
    }
    if (made == review.shifts().size()) {
      return Optional.of(
          made == 2
              ? "Both shifts were made where you planned them."
              : "All " + Phrases.count(made) + " shifts were made where you planned them.");
    }
    return Optional.of(
        Phrases.sentence(
            Phrases.count(made, "shift")
                + (made == 1 ? " was" : " were")
                + " made where planned."));
  }

  /** That the sound does not tell of some. */
  Optional<String> unheard() {
    List<ReviewedShift> unheard = of(ShiftVerdict.UNHEARD);
    if (unheard.isEmpty()) {
      return Optional.empty();
    }
    if (!review.guitarKnown()) {
      return Optional.of(
          "On which string you shifted cannot be told from the pitches alone; once the guitar has"
              + " been calibrated, its sound may tell.");
    }
    if (unheard.size() > 1) {
      return Optional.of(
          "The sound does not tell on which string "
              + Phrases.count(unheard.size())
              + " of the shifts were made.");
    }
    PlannedShift planned = unheard.get(0).planned();
    return Optional.of(
        "The sound does not tell on which string you moved "
            + Phrases.way(planned.direction())
            + pair(planned)
            + inRound(planned)
            + ".");
  }

  private String pair(PlannedShift shift) {
    if (drill.route().shapes().size() == 2) {
      return "";
    }
    int to = shift.pair() + (shift.direction() == Direction.UP ? 1 : 0);
    return " to the " + drill.route().shapes().get(to).spoken() + " shape";
  }

  private String inRound(PlannedShift shift) {
    return drill.route().rounds() > 1 ? " in round " + (shift.round() + 1) : "";
  }
}
