package neckway.review.words;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import neckway.follow.Verdict;
import neckway.hand.ShiftVerdict;
import neckway.neck.Step;
import neckway.review.ReviewedNote;
import neckway.review.StepVerdict;
import neckway.words.Wording;

/** Says which rounds had no slip, where others had some. */
final class CleanRounds {
  private static final int MOST_NAMED = 4;

  private final Played played;

  CleanRounds(Played played) {
    this.played = played;
  }

  /** "Rounds 1 and 2 had no slip." */
  Optional<Sentence> sentence() {
    Set<Integer> spoilt = spoilt();
    List<Integer> clean =
        IntStream.range(0, played.rounds()).filter(r -> !spoilt.contains(r)).boxed().toList();
    if (clean.isEmpty() || spoilt.isEmpty()) {
      return Optional.empty();
    }
    if (clean.size() > MOST_NAMED) {
      return Optional.of(
          Sentence.of(
              Wording.of(
                  "cleanRounds.count",
                  Wording.capital(Phrases.count(clean.size())),
                  Phrases.count(played.rounds()))));
    }
    List<String> numbers = clean.stream().map(r -> Integer.toString(r + 1)).toList();
    return Optional.of(
        Sentence.of(Wording.counted("cleanRounds", clean.size(), Wording.list(numbers))));
  }

  /**
   * Rounds of which a note was not right, or a shift not made as planned, or which were not whole.
   */
  private Set<Integer> spoilt() {
    Stream<Integer> notRight =
        played.drill().route().steps().stream()
            .map(Step::index)
            .filter(
                s ->
                    played.review().steps().get(s).verdict() != StepVerdict.PLAYED
                        || played.inPlace(s).isEmpty());
    Stream<Integer> besides =
        Stream.concat(played.notes(Verdict.REPEAT).stream(), played.straysBetween().stream())
            .map((ReviewedNote note) -> played.stepAt(note));
    Stream<Integer> shifts =
        Stream.of(ShiftVerdict.MISSED, ShiftVerdict.MOVED)
            .flatMap(verdict -> played.shifts(verdict).stream())
            .map(shift -> shift.planned().landingStep());
    return Stream.of(notRight, besides, shifts)
        .flatMap(steps -> steps)
        .map(played::round)
        .collect(Collectors.toUnmodifiableSet());
  }
}
