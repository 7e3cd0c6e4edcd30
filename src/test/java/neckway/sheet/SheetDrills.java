package neckway.sheet;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import neckway.drill.Drill;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.neck.Key;
import neckway.neck.Neck;
import neckway.neck.Shape;
import neckway.neck.Tuning;

/** Drills that sheets are made of. */
final class SheetDrills {
  private SheetDrills() {}

  static PlayableDrill of(
      String title, String key, String shapes, String tuning, int rounds, Pulse pulse) {
    return new Drill(
            Optional.ofNullable(title),
            Tuning.parse(tuning),
            Neck.MOST_FRETS,
            Key.parse(key),
            Arrays.stream(shapes.split(",")).map(Shape::parse).toList(),
            OptionalInt.empty(),
            List.of(),
            List.of(),
            rounds,
            pulse)
        .playable();
  }

  static PlayableDrill of(String key, String shapes, int rounds, Pulse pulse) {
    return of(null, key, shapes, "standard", rounds, pulse);
  }

  /**
   * Of every number of notes a beat, one to five shapes, sharps and flats, four to eight strings.
   */
  static List<PlayableDrill> many() {
    return List.of(
        of("G major", "major,dorian", 1, new Pulse(80, 2, 4, 4)),
        of("G major", "major,dorian", 1, new Pulse(80, 2, 4, 4, 2 / 3.0, 0.5)),
        of("A minor", "minor,major", 1, new Pulse(60, 4, 4, 4, 0.6, 1.25)),
        of("Bb major", "major,dorian,phrygian", 2, new Pulse(93.5, 3, 4, 0)),
        of("F# minor", "minor", 3, new Pulse(20, 1, 3, 4)),
        of("E minor", "minor,major,dorian,phrygian,mixolydian", 1, new Pulse(400, 4, 5, 4)),
        of("Eb major", "dorian,phrygian", 1, new Pulse(61, 5, 4, 4)),
        of("C# minor", "minor,major", 2, new Pulse(120, 6, 2, 4)),
        of("A minor", "mixolydian,minor", 1, new Pulse(72, 7, 4, 4)),
        of("Bass & <low>", "A minor", "minor,major", "E1 A1 D2 G2", 1, new Pulse(80, 8, 16, 4)),
        of(
            "Ten \u5b57 \u0444",
            "E minor",
            "minor,major,dorian,phrygian,mixolydian",
            "F#1 B1 E2 A2 D3 G3 B3 E4",
            1,
            new Pulse(80, 1, 13, 4)));
  }
}
