package neckway.calls;

import java.util.Locale;
import java.util.Optional;
import neckway.drill.Cue;
import neckway.neck.GuitarString;
import neckway.neck.Join;
import neckway.neck.Shape;
import neckway.neck.Tuning;
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
  /** "up on D", "stay", "down on A": in English, as files have it. */
  public String words(Tuning tuning) {
    return cue.words(tuning);
  }

  /** The same in the language that is spoken. */
  public String spoken(Tuning tuning) {
    String move = "call." + cue.move().name().toLowerCase(Locale.ROOT);
    return cue.string()
        .map(string -> Wording.of(move, name(string, tuning)))
        .orElseGet(() -> Wording.of(move));
  }

  private String name(GuitarString string, Tuning tuning) {
    String note = cue.noteName(tuning);
    return cue.namesOneString(tuning) ? note : Wording.of("call.string", note, string.number());
  }

  /** The shape that it leads to; empty to stay. */
  public Optional<Shape> to() {
    return join.map(there -> cue.move() == Cue.Move.UP ? there.upper() : there.lower());
  }
}
