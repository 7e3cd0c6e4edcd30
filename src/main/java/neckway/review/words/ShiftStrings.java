package neckway.review.words;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import neckway.hand.ShiftVerdict;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.PlannedShift;
import neckway.review.GuitarKnown;
import neckway.review.Landings;
import neckway.review.Review;
import neckway.review.ReviewedShift;

/** Says on which strings the hand moved, as far as the sound tells. */
final class ShiftStrings {
  private static final int MOST_NAMED = 3;

  /** Shifts of the same pair and way that were made on the same string. */
  record Kind(Direction direction, int pair, GuitarString planned, GuitarString heard) {
    static Kind of(ReviewedShift shift) {
      PlannedShift planned = shift.planned();
      return new Kind(
          planned.direction(), planned.pair(), planned.string(), shift.string().orElseThrow());
    }
  }

  private final Played played;
  private final Review review;

  ShiftStrings(Played played) {
    this.played = played;
    this.review = played.review();
  }

  List<Sentence> sentences() {
    List<Sentence> said = new ArrayList<>();
    List<Sentence> moved = new ArrayList<>();
    moved().forEach((kind, shifts) -> moved.add(Sentence.of(moved(kind, shifts), steps(shifts))));
    said.addAll(moved.subList(0, Math.min(MOST_NAMED, moved.size())));
    if (moved.size() > MOST_NAMED) {
      List<ReviewedShift> more =
          moved().values().stream().skip(MOST_NAMED).flatMap(List::stream).toList();
      said.add(
          Sentence.of(
              Phrases.sentence(Phrases.count(more.size()))
                  + " more "
                  + (more.size() == 1 ? "shift was" : "shifts were")
                  + " made on another string than planned, marked below.",
              steps(more)));
    }
    made().map(Sentence::of).ifPresent(said::add);
    return said;
  }

  /** The shifts made on another string, those alike together. */
  Map<Kind, List<ReviewedShift>> moved() {
    Map<Kind, List<ReviewedShift>> kinds = new LinkedHashMap<>();
    for (ReviewedShift shift : played.shifts(ShiftVerdict.MOVED)) {
      kinds.computeIfAbsent(Kind.of(shift), k -> new ArrayList<>()).add(shift);
    }
    return kinds;
  }

  /** The notes on which the hand landed, or should have. */
  List<Integer> steps(List<ReviewedShift> shifts) {
    return shifts.stream().map(new Landings(played.drill())::step).toList();
  }

  private String moved(Kind kind, List<ReviewedShift> shifts) {
    return "You shifted "
        + Phrases.way(kind.direction())
        + pair(shifts.get(0).planned())
        + " on the "
        + Phrases.string(kind.heard())
        + Phrases.inRounds(shifts.stream().map(s -> s.planned().round()).toList(), played.rounds())
        + ", not on the "
        + Phrases.string(kind.planned())
        + " as planned.";
  }

  private Optional<String> made() {
    int made = played.shifts(ShiftVerdict.MADE).size();
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
  Optional<Sentence> unheard() {
    if (review.guitar() == GuitarKnown.ANOTHER) {
      return Optional.of(
          Sentence.of(
              "The notes do not sound like the guitar of this profile, so on which strings you"
                  + " shifted is not told; calibrate the guitar that you play."));
    }
    List<ReviewedShift> unheard = played.shifts(ShiftVerdict.UNHEARD);
    if (unheard.isEmpty()) {
      return Optional.empty();
    }
    if (review.guitar() == GuitarKnown.NOT_LEARNT) {
      return Optional.of(
          Sentence.of(
              "On which string you shifted cannot be told from the pitches alone; once the guitar"
                  + " has been calibrated, its sound may tell."));
    }
    if (unheard.size() > 1) {
      return Optional.of(
          Sentence.of(
              "The sound does not tell on which string "
                  + Phrases.count(unheard.size())
                  + " of the shifts were made.",
              steps(unheard)));
    }
    PlannedShift planned = unheard.get(0).planned();
    return Optional.of(
        Sentence.of(
            "The sound does not tell on which string you shifted "
                + Phrases.way(planned.direction())
                + pair(planned)
                + Phrases.inRounds(List.of(planned.round()), played.rounds())
                + ".",
            steps(unheard)));
  }

  private String pair(PlannedShift shift) {
    if (played.drill().route().shapes().size() == 2) {
      return "";
    }
    int to = shift.pair() + (shift.direction() == Direction.UP ? 1 : 0);
    return " to the " + played.drill().route().shapes().get(to).spoken() + " shape";
  }
}
