package neckway.desk.open;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import neckway.drill.Drill;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.neck.BadInput;
import neckway.neck.Direction;
import neckway.neck.JoinChoice;
import neckway.neck.Shape;
import neckway.practice.Exercise;
import neckway.practice.PlanMaker;
import neckway.practice.Progress;
import neckway.practice.Reach;

/** Makes a drill of what is pointed at. */
final class Practised {
  private static final int NOTES_A_BEAT = 2;

  private Practised() {}

  /**
   * A shape alone, or a pair with a join in its direction and the cleanest one in the other.
   *
   * @param now the drill from which bar and count-in are taken
   * @throws BadInput where it does not fit the neck
   */
  static PlayableDrill drill(Reach reach, Progress progress, PlayableDrill now) {
    List<Shape> shapes;
    List<JoinChoice> up = List.of();
    List<JoinChoice> down = List.of();
    if (progress.exercise() instanceof Exercise.OfJoin join) {
      shapes = List.of(join.lower(), join.upper());
      List<JoinChoice> asked = List.of(JoinChoice.on(join.string(), join.finger()));
      up = join.direction() == Direction.UP ? asked : up;
      down = join.direction() == Direction.DOWN ? asked : down;
    } else {
      shapes = List.of(((Exercise.OfShape) progress.exercise()).shape());
    }
    Pulse pulse = now.pulse();
    return new Drill(
            Optional.empty(),
            now.tuning(),
            now.neck().frets(),
            reach.key(),
            shapes,
            OptionalInt.empty(),
            up,
            down,
            now.rounds(),
            pulse
                .withNotesPerBeat(NOTES_A_BEAT)
                .withTempo(PlanMaker.nextTempo(progress, reach.target())))
        .playable();
  }
}
