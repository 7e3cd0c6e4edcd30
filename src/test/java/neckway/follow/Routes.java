package neckway.follow;

import java.util.ArrayList;
import java.util.List;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.Place;
import neckway.neck.PlannedShift;
import neckway.neck.Route;
import neckway.neck.Shape;
import neckway.neck.Step;

/** Routes for tests, made by hand or from bare scale notes. */
public final class Routes {
  private static final int[] OPEN = {64, 59, 55, 50, 45, 40};
  private static final int[] PENTATONIC = {0, 2, 4, 7, 9};

  private Routes() {}

  /**
   * The worked example of the drill format: G major, major into Dorian, start 3, up on string 3,
   * down on string 5.
   */
  public static Route example() {
    String places =
        "6:3 6:5 5:2 5:5 4:2 4:5 3:2 3:4 3:7 2:5 2:8 1:5 1:7 1:5 2:8 2:5 3:7 3:4 4:7 4:5 5:7 5:5"
            + " 5:2 6:5 6:3";
    List<Step> steps = new ArrayList<>();
    for (String place : places.split(" ")) {
      int string = place.charAt(0) - '0';
      int fret = place.charAt(2) - '0';
      int i = steps.size();
      steps.add(step(i, string, fret, i >= 7 && i < 22 ? 1 : 0));
    }
    return new Route(
        List.of(Shape.MAJOR, Shape.DORIAN),
        steps,
        List.of(
            new PlannedShift(0, Direction.UP, 0, new GuitarString(3), 1, 7),
            new PlannedShift(0, Direction.DOWN, 0, new GuitarString(5), 4, 22)),
        1);
  }

  /**
   * A chain of shapes up and down by its pitches alone; where each note lies is not meant to be
   * played.
   */
  public static Route bare(int tonicMidi, int degree, int shapes, int rounds, int shiftAt) {
    int up = 12 + shapes - 1;
    List<Integer> ladder = new ArrayList<>();
    for (int i = 0; i < up; i++) {
      int at = degree + i;
      ladder.add(tonicMidi + 12 * (at / 5) + PENTATONIC[at % 5]);
    }
    List<Integer> midi = new ArrayList<>(ladder);
    for (int round = 0; round < rounds; round++) {
      for (int i = up - 2; i >= 0; i--) {
        midi.add(ladder.get(i));
      }
      for (int i = 1; i < up && round + 1 < rounds; i++) {
        midi.add(ladder.get(i));
      }
    }
    List<Step> steps = new ArrayList<>();
    for (int pitch : midi) {
      int i = ladder.indexOf(pitch);
      int string = Math.max(1, 6 - i / 2);
      int fret = Math.max(0, pitch - OPEN[string - 1]);
      steps.add(new Step(steps.size(), new Place(new GuitarString(string), fret), pitch, 1, 0));
    }
    List<PlannedShift> shifts = new ArrayList<>();
    int perRound = 2 * up - 2;
    for (int round = 0; round < rounds; round++) {
      int start = round * perRound;
      for (int pair = 0; pair + 1 < shapes; pair++) {
        shifts.add(
            new PlannedShift(
                round, Direction.UP, pair, new GuitarString(3), 1, start + shiftAt + pair));
      }
      for (int pair = shapes - 2; pair >= 0; pair--) {
        int landing = start + perRound - shiftAt - pair;
        shifts.add(new PlannedShift(round, Direction.DOWN, pair, new GuitarString(3), 4, landing));
      }
    }
    List<Shape> chain = new ArrayList<>();
    Shape shape = Shape.values()[degree];
    for (int i = 0; i < shapes; i++) {
      chain.add(shape);
      shape = shape.next();
    }
    return new Route(chain, steps, shifts, rounds);
  }

  private static Step step(int index, int string, int fret, int stand) {
    return new Step(
        index,
        new Place(new GuitarString(string), fret),
        OPEN[string - 1] + fret,
        fret == 0 ? 0 : 1,
        stand);
  }
}
