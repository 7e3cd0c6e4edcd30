package neckway.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import java.util.stream.IntStream;
import neckway.follow.Pulse;
import neckway.neck.BadInput;
import neckway.neck.JoinChoice;
import neckway.neck.Key;
import neckway.neck.Neck;
import neckway.neck.Route;
import neckway.neck.RouteBuilder;
import neckway.neck.Shape;
import neckway.neck.Tuning;

/** Drills as chance has them: tuning, key, shapes, place, joins, rounds, tempo. */
final class RandomDrills {
  private static final List<String> OTHER_TUNINGS =
      List.of(
          "Eb2 Ab2 Db3 Gb3 Bb3 Eb4",
          "D2 A2 D3 G3 B3 E4",
          "C2 G2 C3 F3 A3 D4",
          "D2 G2 D3 G3 B3 D4",
          "B1 E2 A2 D3 G3 B3 E4",
          "F#1 B1 E2 A2 D3 G3 B3 E4");

  private static final String[] TONICS = "C Db D Eb E F F# G Ab A Bb B".split(" ");

  static final int[] MOSTLY_TWO = {1, 1, 2, 2, 2, 2, 2, 3, 4, 5};

  /**
   * A drill.
   *
   * @param neck what it is played on
   * @param route what to play
   * @param pulse when
   */
  record Drill(Neck neck, Route route, Pulse pulse) {}

  private final Random random;

  RandomDrills(Random random) {
    this.random = random;
  }

  /** One in three on another tuning than the standard one. */
  Drill any() {
    boolean standard = random.nextInt(3) > 0;
    Tuning tuning =
        standard
            ? Tuning.STANDARD
            : Tuning.parse(OTHER_TUNINGS.get(random.nextInt(OTHER_TUNINGS.size())));
    return on(tuning, MOSTLY_TWO[random.nextInt(MOSTLY_TWO.length)], 0, 21, 0.14, 0.5);
  }

  /** A drill of so many shapes on given frets, its gap in seconds within limits. */
  Drill on(
      Tuning tuning, int shapeCount, int lowestFret, int highestFret, double least, double most) {
    while (true) {
      Key key = Key.parse(TONICS[random.nextInt(TONICS.length)] + " major");
      Neck neck = new Neck(key, tuning, 22);
      List<Shape> shapes = shapes(shapeCount);
      int start = lowestFret + random.nextInt(13);
      try {
        Route route =
            RouteBuilder.build(
                neck,
                shapes,
                OptionalInt.of(start),
                joins(tuning.count(), shapes.size() - 1, true),
                joins(tuning.count(), shapes.size() - 1, false),
                random.nextInt(8) == 0 ? 2 : 1);
        if (route.steps().stream()
            .allMatch(s -> s.place().fret() >= lowestFret && s.place().fret() <= highestFret)) {
          return new Drill(neck, route, pulse(least + (most - least) * random.nextDouble()));
        }
      } catch (BadInput unfit) {
        // the start is not this shape's note in this key, or the chain does not fit: draw again
      }
    }
  }

  private List<Shape> shapes(int count) {
    List<Shape> shapes = new ArrayList<>();
    shapes.add(Shape.values()[random.nextInt(5)]);
    while (shapes.size() < count) {
      shapes.add(shapes.get(shapes.size() - 1).next());
    }
    return shapes;
  }

  /** Strings of the joins in the order met: going up none lower than the one before. */
  private List<JoinChoice> joins(int strings, int pairs, boolean up) {
    int[] drawn =
        IntStream.generate(() -> 1 + random.nextInt(strings)).limit(pairs).sorted().toArray();
    List<JoinChoice> joins = new ArrayList<>();
    for (int i = 0; i < pairs; i++) {
      joins.add(JoinChoice.on(up ? drawn[pairs - 1 - i] : drawn[i]));
    }
    return joins;
  }

  private Pulse pulse(double gapSeconds) {
    while (true) {
      int notesPerBeat = 1 + random.nextInt(4);
      double tempo = Math.rint(60 / gapSeconds / notesPerBeat);
      if (tempo >= 40 && tempo <= 220) {
        return new Pulse(tempo, notesPerBeat, 4, 4);
      }
    }
  }
}
