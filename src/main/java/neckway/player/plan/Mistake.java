package neckway.player.plan;

import java.util.Optional;
import java.util.OptionalInt;
import neckway.neck.Direction;
import neckway.neck.GuitarString;

/** Something that the virtual player does other than the route asks. */
public sealed interface Mistake {
  /**
   * A slip at one step.
   *
   * @param kind what is done
   * @param step index into the steps of the whole take
   * @param midi the pitch that sounds, where the kind has one of its own; the player picks if empty
   */
  record Slip(Kind kind, int step, OptionalInt midi) implements Mistake {
    public Slip {
      if (step < 0) {
        throw new IllegalArgumentException("step " + step + ": steps count from 0");
      }
    }
  }

  /**
   * A shift made elsewhere or not at all.
   *
   * @param round from 0
   * @param direction up or down
   * @param pair index of the lower shape; the first pair of that round not yet spoken for if empty
   * @param string where the hand moves instead; empty: it stays in its shape
   */
  record ShiftElsewhere(
      int round, Direction direction, OptionalInt pair, Optional<GuitarString> string)
      implements Mistake {}

  /**
   * A step played late. Past half a slot the player comes back in on a later slot.
   *
   * @param step index into the steps of the whole take
   * @param ms how late, milliseconds; negative is early
   */
  record Late(int step, double ms) implements Mistake {}

  /** The slips that take one step. */
  enum Kind {
    /** Another pitch in place of the step. */
    WRONG,
    /** The step is left out. */
    SKIP,
    /** The step is struck again, about half a slot later. */
    REPEAT,
    /** A note that belongs to no step, about half a slot after the step. */
    EXTRA
  }
}
