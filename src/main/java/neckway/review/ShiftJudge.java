package neckway.review;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import neckway.drill.PlayableDrill;
import neckway.drill.Slots;
import neckway.follow.NoteVerdict;
import neckway.hand.ShiftDetector;
import neckway.hand.ShiftSaid;
import neckway.hand.ShiftVerdict;
import neckway.hear.RobustStatistics;
import neckway.neck.GuitarString;
import neckway.neck.PlannedShift;
import neckway.neck.Route;

/** Gathers what became of each shift of the attempt that got furthest, and how late it landed. */
final class ShiftJudge {
  private final Route route;
  private final Attempt attempt;
  private final int toldAs;
  private final ShiftDetector hand;
  private final Landings landings;
  private final Slots own;
  private final OptionalDouble medianInterOnsetSeconds;

  /**
   * @param toldAs the attempt's number while it was told
   * @param own the slots as the player kept them
   */
  ShiftJudge(PlayableDrill drill, Attempt attempt, int toldAs, ShiftDetector hand, Slots own) {
    this.route = drill.route();
    this.attempt = attempt;
    this.toldAs = toldAs;
    this.hand = hand;
    this.own = own;
    this.landings = new Landings(drill);
    double[] interOnsets = interOnsets();
    this.medianInterOnsetSeconds =
        interOnsets.length == 0
            ? OptionalDouble.empty()
            : OptionalDouble.of(RobustStatistics.median(interOnsets));
  }

  /** Seconds between notes of steps that follow each other, as if all were as long. */
  private double[] interOnsets() {
    List<Double> interOnsets = new ArrayList<>();
    for (int s = 1; s < route.steps().size(); s++) {
      Optional<NoteVerdict> before = attempt.inPlace(s - 1);
      Optional<NoteVerdict> here = attempt.inPlace(s);
      if (before.isPresent() && here.isPresent()) {
        interOnsets.add((here.get().note().time() - before.get().note().time()) / own.gapBefore(s));
      }
    }
    return interOnsets.stream().mapToDouble(g -> g).toArray();
  }

  List<ReviewedShift> judge() {
    return route.shifts().stream().map(this::judge).toList();
  }

  private ReviewedShift judge(PlannedShift shift) {
    Optional<ShiftSaid> said = hand.said(toldAs, shift);
    if (said.isEmpty()) {
      return new ReviewedShift(
          shift,
          ShiftVerdict.UNPLAYED,
          Optional.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty());
    }
    OptionalDouble late = OptionalDouble.empty();
    if (said.get().verdict() != ShiftVerdict.MISSED) {
      GuitarString string = said.get().string().orElse(shift.string());
      late = lateMs(landings.step(shift, string));
    }
    return new ReviewedShift(
        shift,
        said.get().verdict(),
        said.get().string(),
        said.get().p(),
        late,
        OptionalDouble.of(said.get().decided()));
  }

  /**
   * Empty where the landing note was not heard, or nothing before it in the attempt, or where no
   * two notes follow each other, which would tell the usual time between them.
   */
  private OptionalDouble lateMs(int landing) {
    if (medianInterOnsetSeconds.isEmpty()) {
      return OptionalDouble.empty();
    }
    Optional<NoteVerdict> here = attempt.inPlace(landing);
    for (int s = landing - 1; here.isPresent() && s >= 0; s--) {
      Optional<NoteVerdict> before = attempt.inPlace(s);
      if (before.isPresent()) {
        double usual = medianInterOnsetSeconds.getAsDouble() * (1 + own.lag(landing) - own.lag(s));
        double interOnset = here.get().note().time() - before.get().note().time();
        return OptionalDouble.of((interOnset - usual) * 1000);
      }
    }
    return OptionalDouble.empty();
  }
}
