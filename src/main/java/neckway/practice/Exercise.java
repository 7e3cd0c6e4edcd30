package neckway.practice;

import neckway.neck.Direction;
import neckway.neck.Shape;

/** What is learnt one by one: a shape alone, or a join in one direction. */
public sealed interface Exercise {
  /**
   * A shape played up and down by itself.
   *
   * @param shape which
   */
  record OfShape(Shape shape) implements Exercise {}

  /**
   * Going from a shape to its neighbour.
   *
   * @param lower the shape below
   * @param upper the one above
   * @param direction up or down
   * @param string where the hand goes, as players number strings
   * @param finger that plays the landing note of the direction
   */
  record OfJoin(Shape lower, Shape upper, Direction direction, int string, int finger)
      implements Exercise {}
}
