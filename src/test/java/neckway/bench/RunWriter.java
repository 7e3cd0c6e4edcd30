package neckway.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

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

  private RunWriter() {}

  /** A run up and down through one or two shapes, each fret within the limits. */
  static List<Spot> random(Random random, int lowestFret, int highestFret) {
    while (true) {
      int degree = random.nextInt(5);
      int start = lowestFret + random.nextInt(Math.max(1, highestFret - lowestFret - 5));
      List<Spot> lower = shape(degree, start);
      List<Spot> run =
          random.nextInt(4) == 0
              ? upAndDown(lower)
              : twoShapes(
                  lower,
                  shape((degree + 1) % 5, lower.get(1).fret()),
                  random.nextInt(6),
                  random.nextInt(6));
      if (run.stream().allMatch(s -> s.fret() >= lowestFret && s.fret() <= highestFret)) {
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

  private static List<Spot> upAndDown(List<Spot> shape) {
    List<Spot> run = new ArrayList<>(shape);
    for (int i = shape.size() - 2; i >= 0; i--) {
      run.add(shape.get(i));
    }
    return run;
  }

  /** Up with a join on one string, down with one on another; strings counted from the lowest. */
  static List<Spot> twoShapes(List<Spot> lower, List<Spot> upper, int joinUp, int joinDown) {
    List<Spot> run = new ArrayList<>(lower.subList(0, 2 * joinUp + 2));
    run.addAll(upper.subList(2 * joinUp + 1, 12));
    for (int i = 10; i >= 2 * joinDown; i--) {
      run.add(upper.get(i));
    }
    for (int i = 2 * joinDown; i >= 0; i--) {
      run.add(lower.get(i));
    }
    return run;
  }
}
