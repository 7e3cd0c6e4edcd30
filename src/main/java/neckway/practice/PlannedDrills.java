package neckway.practice;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import neckway.drill.Drill;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.neck.BadInput;
import neckway.neck.JoinChoice;
import neckway.neck.Key;
import neckway.neck.Neck;
import neckway.neck.Shape;

/** The drills of a plan, on one neck. */
record PlannedDrills(Neck neck) {
  /** So much of the time is playing; the rest is looking, breathing and beginning again. */
  private static final double PLAYING_SHARE = 0.6;

  private static final int MOST_ROUNDS = 12;
  private static final int SECONDS_A_MINUTE = 60;

  /**
   * One round of a drill.
   *
   * @param up the joins going up; empty: the cleanest
   * @param down the joins coming down
   * @param tempo beats a minute of two notes
   * @return empty where the shapes do not fit the neck
   */
  Optional<PlayableDrill> drill(
      Key key, List<Shape> shapes, List<JoinChoice> up, List<JoinChoice> down, double tempo) {
    Pulse usual = Drill.USUAL_PULSE;
    try {
      return Optional.of(
          new Drill(
                  Optional.empty(),
                  neck.tuning(),
                  neck.frets(),
                  key,
                  shapes,
                  OptionalInt.empty(),
                  up,
                  down,
                  1,
                  new Pulse(tempo, 2, usual.beatsPerBar(), usual.countIn()))
              .playable());
    } catch (BadInput doesNotFitThisNeck) {
      return Optional.empty();
    }
  }

  /** A drill as an item, with as many rounds as its minutes hold, but so many at least. */
  static PlanItem item(
      PlanItem.Kind kind, int minutes, int fewestRounds, PlayableDrill drill, String why) {
    PlayableDrill once = drill.once();
    double seconds = (once.route().steps().size() - 1) * once.pulse().slotSeconds();
    int rounds = (int) Math.rint(PLAYING_SHARE * SECONDS_A_MINUTE * minutes / seconds);
    int bounded = Math.max(fewestRounds, Math.min(MOST_ROUNDS, rounds));
    PlayableDrill repeated = once.drill().withRounds(bounded).playable();
    return new PlanItem(kind, minutes, bounded, Optional.of(repeated), why);
  }
}
