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
import neckway.words.Wording;

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
              Wording.capital(
                  Wording.counted("strings.more", more.size(), Phrases.count(more.size()))),
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
    List<Integer> rounds = shifts.stream().map(s -> s.planned().round()).toList();
    return Wording.of(
        Phrases.towards("strings.moved", kind.direction()),
        pair(shifts.get(0).planned()),
        Phrases.ordinal(kind.heard()),
        Phrases.inRounds(rounds, played.rounds()),
        Phrases.ordinal(kind.planned()));
  }

  private Optional<String> made() {
    int made = played.shifts(ShiftVerdict.MADE).size();
    if (made == 0) {
      return Optional.empty();
    }
    if (made == review.shifts().size()) {
      return Optional.of(
          made == 2
              ? Wording.of("strings.made.both")
              : Wording.of("strings.made.all", Phrases.count(made)));
    }
    return Optional.of(Wording.capital(Wording.counted("strings.made", made, Phrases.count(made))));
  }

  /** That the sound does not tell of some. */
  Optional<Sentence> unheard() {
    if (review.guitar() == GuitarKnown.ANOTHER) {
      return Optional.of(Sentence.of(Wording.of("strings.another")));
    }
    List<ReviewedShift> unheard = played.shifts(ShiftVerdict.UNHEARD);
    if (unheard.isEmpty()) {
      return Optional.empty();
    }
    if (review.guitar() == GuitarKnown.NOT_LEARNT) {
      return Optional.of(Sentence.of(Wording.of("strings.notLearnt")));
    }
    if (unheard.size() > 1) {
      return Optional.of(
          Sentence.of(
              Wording.of("strings.unheard", Phrases.count(unheard.size())), steps(unheard)));
    }
    PlannedShift planned = unheard.get(0).planned();
    return Optional.of(
        Sentence.of(
            Wording.of(
                Phrases.towards("strings.unheard", planned.direction()),
                pair(planned),
                Phrases.inRounds(List.of(planned.round()), played.rounds())),
            steps(unheard)));
  }

  private String pair(PlannedShift shift) {
    if (played.drill().route().shapes().size() == 2) {
      return "";
    }
    int to = shift.pair() + (shift.direction() == Direction.UP ? 1 : 0);
    return Wording.of("strings.to", Phrases.shape(played.drill().route().shapes().get(to)));
  }
}
