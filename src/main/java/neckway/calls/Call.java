package neckway.calls;

import java.util.Locale;
import java.util.Optional;
import neckway.drill.Cue;
import neckway.neck.Join;
import neckway.neck.Shape;
import neckway.neck.Tuning;
import neckway.words.Tongue;
import neckway.words.Wording;

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
  /**
   * "up on D", "stay", "down on A": in English, as files have it. Of two strings with one name the
   * number tells which.
   */
  public String words(Tuning tuning) {
    return Wording.in(Tongue.ENGLISH, () -> spoken(tuning));
  }

  /** The same in the language that is spoken. */
  String spoken(Tuning tuning) {
    String move = "call." + cue.move().name().toLowerCase(Locale.ROOT);
    return stringName(tuning).map(name -> Wording.of(move, name)).orElseGet(() -> Wording.of(move));
  }

  /** The string on which to go, as it is called; empty to stay. */
  public Optional<String> stringName(Tuning tuning) {
    return join.map(there -> string(there, tuning));
  }

  private static String string(Join join, Tuning tuning) {
    int number = join.string().number();
    String name = tuning.lowToHigh().get(tuning.count() - number).note();
    long alike = tuning.lowToHigh().stream().filter(open -> open.note().equals(name)).count();
    return alike == 1 ? name : Wording.of("call.string", name, number);
  }

  /** The shape that it leads to; empty to stay. */
  public Optional<Shape> to() {
    return join.map(there -> cue.move() == Cue.Move.UP ? there.upper() : there.lower());
  }
}
