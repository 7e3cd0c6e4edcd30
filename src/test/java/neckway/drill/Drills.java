package neckway.drill;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import neckway.neck.JoinChoice;
import neckway.neck.Key;
import neckway.neck.Neck;
import neckway.neck.Shape;
import neckway.neck.Tuning;

/** Drills for tests: standard tuning, 22 frets, the usual pulse. */
public final class Drills {
  private Drills() {}

  /**
   * A drill that begins on a fret.
   *
   * @param shapes their names with commas between
   */
  public static PlayableDrill of(
      String key,
      String shapes,
      OptionalInt start,
      List<JoinChoice> up,
      List<JoinChoice> down,
      int rounds) {
    return new Drill(
            Optional.empty(),
            Tuning.STANDARD,
            Neck.USUAL_FRETS,
            Key.parse(key),
            Arrays.stream(shapes.split(",")).map(Shape::parse).toList(),
            start,
            up,
            down,
            rounds,
            Drill.USUAL_PULSE)
        .playable();
  }

  /** G major, major into Dorian from fret 3, with the joins on these strings. */
  public static PlayableDrill example(int up, int down, int rounds) {
    return of(
        "G major",
        "major,dorian",
        OptionalInt.of(3),
        List.of(JoinChoice.on(up)),
        List.of(JoinChoice.on(down)),
        rounds);
  }

  /**
   * The drill whose steps the documented drill format spells out: G major, major into Dorian from
   * fret 3, up on string 3, down on string 5.
   */
  public static PlayableDrill example() {
    return example(3, 5, 1);
  }
}
