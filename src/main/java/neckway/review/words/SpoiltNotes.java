package neckway.review.words;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import neckway.neck.Step;
import neckway.review.StepVerdict;

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
    String note = Phrases.fretOnString(played.step(step).place());
    if (step == 0) {
      return "put the finger down for the first note, " + note + ", before you count yourself in";
    }
    String from = Phrases.from(step) + " before " + note;
    return is(step, StepVerdict.WRONG)
        ? "start " + from + " and play " + played.into(step) + " to it slowly"
        : "start " + from + ", play " + played.into(step) + " to it and stop on it";
  }

  private String severalTimes(List<Integer> steps) {
    int first = steps.get(0);
    List<Integer> rounds = steps.stream().map(played::round).toList();
    boolean allWrong = steps.stream().allMatch(s -> is(s, StepVerdict.WRONG));
    boolean allLeftOut = steps.stream().allMatch(s -> is(s, StepVerdict.SKIPPED));
    String what = allWrong ? " was wrong" : allLeftOut ? " was left out" : " was wrong or left out";
    return Phrases.fretOnString(played.step(first).place())
        + ", "
        + played.wayAlone(first)
        + ","
        + what
        + Phrases.inRounds(rounds, played.rounds())
        + "; "
        + (first == 0
            ? "stop on it and begin again, slowly"
            : "start "
                + Phrases.from(first)
                + " before it and play "
                + played.into(first)
                + " to it slowly");
  }
}
