package neckway.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.function.IntSupplier;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import neckway.drill.Drill;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.neck.BadInput;
import neckway.neck.JoinChoice;
import neckway.neck.Key;
import neckway.neck.Neck;
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

  /** Tunings that go below E2 and are common. */
  private static final List<String> LOW_TUNINGS =
      List.of("D2 A2 D3 G3 B3 E4", "C2 G2 C3 F3 A3 D4", "B1 E2 A2 D3 G3 B3 E4");

  private static final int[] ONE_TO_THREE = {1, 2, 2, 2, 2, 2, 2, 2, 3, 3};

  /** Fastest and slowest of the ordinary drills, beats a minute at two notes a beat. */
  private static final int ORDINARY_SLOWEST = 64;

  private static final int ORDINARY_FASTEST = 116;

  /** Lowest fret of ordinary drills: no open strings. */
  private static final int ORDINARY_LOWEST = 1;

  private static final String[] TONICS = "C Db D Eb E F F# G Ab A Bb B".split(" ");

  private static final int E2 = 40;

  static final int[] MOSTLY_TWO = {1, 1, 2, 2, 2, 2, 2, 3, 4, 5};

  private final Random random;

  RandomDrills(Random random) {
    this.random = random;
  }

  /** One in three on another tuning than the standard one. */
  PlayableDrill any() {
    boolean standard = random.nextInt(3) > 0;
    Tuning tuning =
        standard
            ? Tuning.STANDARD
            : Tuning.parse(OTHER_TUNINGS.get(random.nextInt(OTHER_TUNINGS.size())));
    return on(tuning, MOSTLY_TWO[random.nextInt(MOSTLY_TWO.length)], 0, 21, 0.14, 0.5);
  }

  /** In standard tuning but for one in ten a half-step down, two notes a beat, one round. */
  PlayableDrill ordinary() {
    Tuning tuning =
        random.nextInt(10) > 0 ? Tuning.STANDARD : Tuning.parse("Eb2 Ab2 Db3 Gb3 Bb3 Eb4");
    return ordinary(tuning, ORDINARY_LOWEST, ORDINARY_SLOWEST, ORDINARY_FASTEST);
  }

  /** An ordinary drill on a tuning that goes below E2, low on the neck, so that it gets there. */
  PlayableDrill low() {
    while (true) {
      Tuning tuning = Tuning.parse(LOW_TUNINGS.get(random.nextInt(LOW_TUNINGS.size())));
      PlayableDrill drill = ordinary(tuning, 1, ORDINARY_SLOWEST, ORDINARY_FASTEST);
      if (drill.route().steps().stream().anyMatch(s -> s.midi() < E2)) {
        return drill;
      }
    }
  }

  /** An ordinary drill from a fret up, its tempo within limits, beats a minute. */
  PlayableDrill ordinary(Tuning tuning, int lowest, int slowest, int fastest) {
    int shapes = ONE_TO_THREE[random.nextInt(ONE_TO_THREE.length)];
    int tempo = slowest + random.nextInt(fastest - slowest + 1);
    return drill(tuning, shapes, lowest, 17, () -> 1, () -> new Pulse(tempo, 2, 4, 4));
  }

  /** A drill of so many shapes on given frets, its gap in seconds within limits. */
  PlayableDrill on(
      Tuning tuning, int shapeCount, int lowestFret, int highestFret, double least, double most) {
    return drill(
        tuning,
        shapeCount,
        lowestFret,
        highestFret,
        () -> random.nextInt(8) == 0 ? 2 : 1,
        () -> pulse(least + (most - least) * random.nextDouble()));
  }

  private PlayableDrill drill(
      Tuning tuning,
      int shapeCount,
      int lowestFret,
      int highestFret,
      IntSupplier rounds,
      Supplier<Pulse> pulse) {
    while (true) {
      Key key = Key.parse(TONICS[random.nextInt(TONICS.length)] + " major");
      List<Shape> shapes = shapes(shapeCount);
      int start = lowestFret + random.nextInt(13);
      try {
        PlayableDrill drill =
            new Drill(
                    Optional.empty(),
                    tuning,
                    Neck.USUAL_FRETS,
                    key,
                    shapes,
                    OptionalInt.of(start),
                    joins(tuning.count(), shapes.size() - 1, true),
                    joins(tuning.count(), shapes.size() - 1, false),
                    rounds.getAsInt(),
                    Drill.USUAL_PULSE)
                .playable();
        if (drill.route().steps().stream()
            .allMatch(s -> s.place().fret() >= lowestFret && s.place().fret() <= highestFret)) {
          return drill.drill().withPulse(pulse.get()).playable();
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

  private Pulse pulse(double slotSeconds) {
    while (true) {
      int notesPerBeat = 1 + random.nextInt(4);
      double tempo = Math.rint(60 / slotSeconds / notesPerBeat);
      if (tempo >= 40 && tempo <= 220) {
        return new Pulse(tempo, notesPerBeat, 4, 4);
      }
    }
  }
}
