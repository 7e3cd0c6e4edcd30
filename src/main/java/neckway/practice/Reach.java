package neckway.practice;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import neckway.neck.Direction;
import neckway.neck.Join;
import neckway.neck.Key;
import neckway.neck.Neck;
import neckway.neck.NeckMap;
import neckway.neck.PlacedShape;
import neckway.neck.Shape;

/**
 * What is open of a key: each of its shapes and each join of neighbours, both ways.
 *
 * @param key the key
 * @param map where its shapes lie and join
 * @param today the day that it is of
 * @param target the tempo to be reached, beats a minute of two notes
 * @param joins of the map, pair by pair, each up and then down, the cleanest first
 * @param shapes of the map
 */
public record Reach(
    Key key,
    NeckMap map,
    LocalDate today,
    double target,
    List<Progress> joins,
    List<Progress> shapes) {
  /** The target where none is named (common practice, no source). */
  public static final double USUAL_TARGET = 100;

  public Reach {
    joins = List.copyOf(joins);
    shapes = List.copyOf(shapes);
  }

  /**
   * From the rounds that were played of the key, in the order played.
   *
   * @throws neckway.neck.BadInput where no shape fits the neck
   */
  public static Reach of(Neck neck, List<PlayedRound> played, double target, LocalDate today) {
    NeckMap map = NeckMap.ofAll(neck);
    Map<Exercise, List<PlayedRound>> byExercise =
        played.stream().collect(Collectors.groupingBy(PlayedRound::exercise));
    List<Progress> joins = new ArrayList<>();
    for (Join join : map.joins()) {
      for (Direction direction : Direction.values()) {
        Exercise exercise = exercise(join, direction);
        List<PlayedRound> rounds = byExercise.getOrDefault(exercise, List.of());
        joins.add(new Progress(exercise, rounds, target, today));
      }
    }
    List<Progress> shapes = new ArrayList<>();
    for (PlacedShape shape : map.shapes()) {
      Exercise exercise = new Exercise.OfShape(shape.shape());
      List<PlayedRound> rounds = byExercise.getOrDefault(exercise, List.of());
      shapes.add(new Progress(exercise, rounds, target, today));
    }
    return new Reach(neck.key(), map, today, target, joins, shapes);
  }

  private static Exercise exercise(Join join, Direction direction) {
    int finger = direction == Direction.UP ? join.finger() : join.downFinger();
    return new Exercise.OfJoin(
        join.lower(), join.upper(), direction, join.string().number(), finger);
  }

  /** The joins from a shape to its neighbour above, in a direction. */
  public List<Progress> joins(Shape lower, Direction direction) {
    return joins.stream()
        .filter(
            p ->
                p.exercise() instanceof Exercise.OfJoin join
                    && join.lower() == lower
                    && join.direction() == direction)
        .toList();
  }

  /** Whether any way from a shape to its neighbour above is open, up and down. */
  public boolean isPairOpen(Shape lower) {
    return isOpen(lower, Direction.UP) && isOpen(lower, Direction.DOWN);
  }

  private boolean isOpen(Shape lower, Direction direction) {
    return joins(lower, direction).stream().anyMatch(p -> p.state() == State.OPEN);
  }

  /** How far a shape is. */
  public Progress shape(Shape shape) {
    return shapes.stream()
        .filter(p -> p.exercise().equals(new Exercise.OfShape(shape)))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no place for " + shape));
  }
}
