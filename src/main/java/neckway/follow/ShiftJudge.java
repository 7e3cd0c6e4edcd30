package neckway.follow;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import neckway.neck.PlannedShift;
import neckway.neck.Route;

/**
 * What the pitches alone tell of the shifts: that one was missed, where the run turned round below
 * the notes that only the next shape has; else nothing.
 */
final class ShiftJudge {
  /** How sure a missed shift is when the lower shape's top note was struck again or was not. */
  private static final double ONE_LEFT_OUT = 0.85;

  private static final double MORE_LEFT_OUT = 0.95;

  private final Route route;
  private final Attempt attempt;
  private final double medianGapSeconds;
  private final int half;

  ShiftJudge(Route route, Attempt attempt) {
    this.route = route;
    this.attempt = attempt;
    this.half = (route.stepsPerRound() - 1) / 2;
    this.medianGapSeconds = Figures.median(gaps());
  }

  /** Seconds between notes of steps that follow each other. */
  private double[] gaps() {
    List<Double> gaps = new ArrayList<>();
    for (int s = 1; s < route.steps().size(); s++) {
      Optional<NoteVerdict> before = attempt.inPlace(s - 1);
      Optional<NoteVerdict> here = attempt.inPlace(s);
      if (before.isPresent() && here.isPresent()) {
        gaps.add(here.get().note().time() - before.get().note().time());
      }
    }
    return gaps.stream().mapToDouble(g -> g).toArray();
  }

  List<ReviewedShift> judge() {
    return route.shifts().stream().map(this::judge).toList();
  }

  private ReviewedShift judge(PlannedShift shift) {
    int top = shift.round() * 2 * half + half;
    int reach = route.shapes().size() - 1 - shift.pair();
    Optional<NoteVerdict> after = turnedBelow(top, reach);
    if (after.isPresent()) {
      double p = turnedWithoutStriking(top, reach) ? MORE_LEFT_OUT : ONE_LEFT_OUT;
      return of(
          shift,
          ShiftVerdict.MISSED,
          OptionalDouble.of(p),
          OptionalDouble.empty(),
          OptionalDouble.of(after.get().decided()));
    }
    int landing = shift.landingStep();
    if (attempt.stoppedBefore(landing)) {
      return of(
          shift,
          ShiftVerdict.UNPLAYED,
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty());
    }
    return of(
        shift, ShiftVerdict.UNHEARD, OptionalDouble.empty(), lateMs(landing), decided(landing));
  }

  /** The first note after the turn, if every step above the lower shape was left out. */
  private Optional<NoteVerdict> turnedBelow(int top, int reach) {
    for (int s = top - reach + 1; s < top + reach; s++) {
      if (!attempt.skipped(s)) {
        return Optional.empty();
      }
    }
    for (int s = top + reach; s <= top + half; s++) {
      if (attempt.inPlace(s).isPresent()) {
        return attempt.inPlace(s);
      }
    }
    return Optional.empty();
  }

  private boolean turnedWithoutStriking(int top, int reach) {
    return attempt.skipped(top + reach) || reach > 1;
  }

  /** Empty where the landing note was not heard, or nothing before it in the attempt. */
  private OptionalDouble lateMs(int landing) {
    Optional<NoteVerdict> here = attempt.inPlace(landing);
    for (int s = landing - 1; here.isPresent() && s >= 0; s--) {
      Optional<NoteVerdict> before = attempt.inPlace(s);
      if (before.isPresent()) {
        double gap = here.get().note().time() - before.get().note().time();
        return OptionalDouble.of((gap - medianGapSeconds) * 1000);
      }
    }
    return OptionalDouble.empty();
  }

  private OptionalDouble decided(int landing) {
    for (int s = landing; s < route.steps().size(); s++) {
      if (attempt.inPlace(s).isPresent()) {
        return OptionalDouble.of(attempt.inPlace(s).get().decided());
      }
    }
    return OptionalDouble.empty();
  }

  private static ReviewedShift of(
      PlannedShift shift,
      ShiftVerdict verdict,
      OptionalDouble p,
      OptionalDouble lateMs,
      OptionalDouble decided) {
    return new ReviewedShift(shift, verdict, Optional.empty(), p, lateMs, decided);
  }
}
