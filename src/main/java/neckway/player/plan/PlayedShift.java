package neckway.player.plan;

import java.util.Optional;
import java.util.OptionalDouble;
import neckway.neck.GuitarString;
import neckway.neck.PlannedShift;

/**
 * What became of a planned shift.
 *
 * @param planned the shift that the route asks for
 * @param outcome what was done
 * @param string where the hand moved; empty unless made or moved
 * @param lateMs time from the note before to the landing note less the take's median time between
 *     notes, milliseconds; empty unless made or moved
 */
public record PlayedShift(
    PlannedShift planned, Outcome outcome, Optional<GuitarString> string, OptionalDouble lateMs) {
  /** What was done. */
  public enum Outcome {
    MADE,
    MOVED,
    MISSED,
    UNPLAYED
  }
}
