package neckway.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.Place;
import neckway.neck.PlannedShift;
import neckway.neck.Route;
import neckway.neck.Shape;
import neckway.neck.Step;

/**
 * Routes of one or two shapes as lists of places, made without the product's own map, so that the
 * one may be held against the other.
 *
 * <p>A shape is consecutive notes of the major pentatonic scale, two a string (common practice, no
 * published source).
 */
final class RunWriter {
  /** Open strings from the lowest up: E2 A2 D3 G3 B3 E4. */
  static final int[] OPEN = {40, 45, 50, 55, 59, 64};

  private static final int[] SCALE = {0, 2, 4, 7, 9};

  /**
   * One place of a run.
   *
   * @param string 6 is the lowest
   */
  record Spot(int string, int fret) {
    int midi() {
      return OPEN[6 - string] + fret;
    }
  }

  /**
   * A run.
   *
   * @param shapes one or two, low to high
   * @param up index of the first note that only the upper shape has; 0 for one shape
   * @param down index of the first note on the way down that only the lower shape has
   */
  record Run(List<Shape> shapes, List<Spot> spots, int up, int down) {
    /** The same as the product speaks of it, played once, the first finger landing. */
    Route route() {
      List<Step> steps = new ArrayList<>();
      for (Spot s : spots) {
        int i = steps.size();
        Place place = new Place(new GuitarString(s.string()), s.fret());
        int stand = i >= up && i < down ? 1 : 0;
        steps.add(new Step(i, place, s.midi(), s.fret() == 0 ? 0 : 1, stand));
      }
      List<PlannedShift> shifts = new ArrayList<>();
      if (shapes.size() == 2) {
        shifts.add(shift(Direction.UP, up));
        shifts.add(shift(Direction.DOWN, down));
      }
      return new Route(shapes, steps, shifts, 1);
    }

    private PlannedShift shift(Direction direction, int landing) {
      GuitarString string = new GuitarString(spots.get(landing).string());
      return new PlannedShift(0, direction, 0, string, 1, landing);
    }
  }

  private RunWriter() {}

  /** A run up and down through one or two shapes, each fret within the limits. */
  static Run random(Random random, int lowestFret, int highestFret) {
    while (true) {
      int degree = random.nextInt(5);
      int start = lowestFret + random.nextInt(Math.max(1, highestFret - lowestFret - 5));
      Run run =
          random.nextInt(4) == 0
              ? upAndDown(degree, start)
              : twoShapes(degree, start, random.nextInt(6), random.nextInt(6));
      if (run.spots().stream().allMatch(s -> s.fret() >= lowestFret && s.fret() <= highestFret)) {
        return run;
      }
    }
  }

  /** Twelve places, from the lowest string up. */
  static List<Spot> shape(int degree, int startFret) {
    int tonic = OPEN[0] + startFret - SCALE[degree];
    List<Spot> spots = new ArrayList<>();
    for (int n = 0; n < 12; n++) {
      int i = degree + n;
      int midi = tonic + SCALE[i % 5] + 12 * (i / 5);
      spots.add(new Spot(6 - n / 2, midi - OPEN[n / 2]));
    }
    return spots;
  }

  private static Run upAndDown(int degree, int startFret) {
    List<Spot> shape = shape(degree, startFret);
    List<Spot> run = new ArrayList<>(shape);
    for (int i = shape.size() - 2; i >= 0; i--) {
      run.add(shape.get(i));
    }
    return new Run(List.of(Shape.values()[degree]), run, 0, 0);
  }

  /** Up with a join on one string, down with one on another; strings counted from the lowest, 0. */
  static Run twoShapes(int degree, int startFret, int joinUp, int joinDown) {
    List<Spot> lower = shape(degree, startFret);
    int upperDegree = (degree + 1) % 5;
    List<Spot> upper = shape(upperDegree, lower.get(1).fret());
    List<Spot> run = new ArrayList<>(lower.subList(0, 2 * joinUp + 2));
    int up = run.size();
    run.addAll(upper.subList(2 * joinUp + 1, 12));
    for (int i = 10; i >= 2 * joinDown; i--) {
      run.add(upper.get(i));
    }
    int down = run.size();
    for (int i = 2 * joinDown; i >= 0; i--) {
      run.add(lower.get(i));
    }
    return new Run(List.of(Shape.values()[degree], Shape.values()[upperDegree]), run, up, down);
  }
}
