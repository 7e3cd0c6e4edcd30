package neckway.review.words;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import neckway.neck.Place;
import neckway.neck.Step;
import neckway.review.StepVerdict;
import neckway.words.Wording;

/** A note played wrong or left out, once or at the same place of several rounds. */
final class SpoiltNotes {
  /** Common practice, no source: the measure of all other costs. */
  private static final double NOTE = 1;

  /** Common practice, no source: what goes wrong again is a habit, and the next run has it too. */
  private static final double AGAIN = 1.5;

  private final Played played;
  private final MissedShifts missed;

  SpoiltNotes(Played played) {
    this.played = played;
    this.missed = new MissedShifts(played);
  }

  List<Cause> causes() {
    Map<Integer, List<Integer>> places = new LinkedHashMap<>();
    for (Step step : played.drill().route().steps()) {
      if (spoilt(step.index())) {
        places
            .computeIfAbsent(played.inRound(step.index()), p -> new ArrayList<>())
            .add(step.index());
      }
    }
    return places.values().stream().map(this::cause).toList();
  }

  private boolean spoilt(int step) {
    return is(step, StepVerdict.WRONG) || is(step, StepVerdict.SKIPPED) && !missed.explain(step);
  }

  private boolean is(int step, StepVerdict verdict) {
    return played.review().steps().get(step).verdict() == verdict;
  }

  private Cause cause(List<Integer> steps) {
    int first = steps.get(0);
    boolean several = steps.size() > 1;
    double cost = steps.size() * (several ? AGAIN : NOTE);
    return new Cause(cost, first, steps, several ? severalTimes(steps) : once(first));
  }

  private String once(int step) {
    Place place = played.step(step).place();
    if (step == 0) {
      return Wording.of(Phrases.at("spoilt.first", place), Phrases.fretOnString(place));
    }
    String key = is(step, StepVerdict.WRONG) ? "spoilt.wrong" : "spoilt.leftOut";
    return Wording.of(
        Phrases.towards(key, played.into(step)), Phrases.from(step), Phrases.before(place));
  }

  private String severalTimes(List<Integer> steps) {
    int first = steps.get(0);
    List<Integer> rounds = steps.stream().map(played::round).toList();
    boolean allWrong = steps.stream().allMatch(s -> is(s, StepVerdict.WRONG));
    boolean allLeftOut = steps.stream().allMatch(s -> is(s, StepVerdict.SKIPPED));
    String then =
        first == 0
            ? Wording.of("spoilt.again.first")
            : Wording.of(Phrases.towards("spoilt.again", played.into(first)), Phrases.from(first));
    String what = allWrong ? "wrong" : allLeftOut ? "leftOut" : "either";
    return Wording.of(
        "spoilt.again." + what,
        Phrases.fretOnString(played.step(first).place()),
        played.wayAlone(first),
        Phrases.inRounds(rounds, played.rounds()),
        then);
  }
}
