package neckway.review;

import java.util.OptionalInt;
import neckway.drill.PlayableDrill;
import neckway.neck.Step;

/**
 * How a note heard in place of a step is named, in sentences and on every page alike: by its fret
 * on the step's string where the hand can have met it there, else by its pitch alone.
 *
 * @param fret on the step's own string; empty where that is out of reach or off the neck
 * @param note spelled in the drill's key, with its octave
 */
public record HeardAs(OptionalInt fret, String note) {
  /**
   * From the fret that was due. A finger a fret makes three, a stretch one more: common practice,
   * no source. Five frets up is also the same fret of the next string, which is likelier.
   */
  private static final int REACH_FRETS = 4;

  /** A pitch in place of a step. */
  public static HeardAs of(PlayableDrill drill, Step due, int midi) {
    int fret = midi - drill.tuning().openMidi(due.place().string());
    boolean onTheNeck = fret >= 0 && fret <= drill.frets();
    boolean inReach = Math.abs(fret - due.place().fret()) <= REACH_FRETS;
    return new HeardAs(
        onTheNeck && inReach ? OptionalInt.of(fret) : OptionalInt.empty(), note(drill, midi));
  }

  /** The one form in which a pitch is named: spelled in the drill's key, with its octave. */
  public static String note(PlayableDrill drill, int midi) {
    return drill.key().spell(midi).toString();
  }

  /** "4" for a fret, "F#3" for a note. */
  public String label() {
    return fret.isPresent() ? Integer.toString(fret.getAsInt()) : note;
  }
}
