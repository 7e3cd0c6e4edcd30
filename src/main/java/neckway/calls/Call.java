package neckway.calls;

import java.util.Locale;
import java.util.Optional;
import neckway.drill.Cue;
import neckway.neck.Join;
import neckway.neck.Shape;
import neckway.neck.Tuning;

/**
 * One call.
 *
 * @param cue when it sounds, and what is called
 * @param stand the shape that the hand is in as it sounds, an index into the drill's chain
 * @param join by which it is to go; empty to stay
 * @param landingStep on which the hand lands; to stay, the turn
 * @param turnStep the highest or lowest note, on which the run then turns round
 */
public record Call(Cue cue, int stand, Optional<Join> join, int landingStep, int turnStep) {
  /** "up on D", "stay", "down on A". Of two strings with one name the number tells which. */
  public String words(Tuning tuning) {
    String move = cue.move().name().toLowerCase(Locale.ROOT);
    return stringName(tuning).map(name -> move + " on " + name).orElse(move);
  }

  /** The string on which to go, as it is called; empty to stay. */
  public Optional<String> stringName(Tuning tuning) {
    return join.map(there -> string(there, tuning));
  }

  private static String string(Join join, Tuning tuning) {
    int number = join.string().number();
    String name = tuning.lowToHigh().get(tuning.count() - number).note();
    long alike = tuning.lowToHigh().stream().filter(open -> open.note().equals(name)).count();
    return alike == 1 ? name : name + ", string " + number;
  }

  /** The shape that it leads to; empty to stay. */
  public Optional<Shape> to() {
    return join.map(there -> cue.move() == Cue.Move.UP ? there.upper() : there.lower());
  }
}
