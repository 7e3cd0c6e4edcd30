package neckway.neck;

import java.util.stream.IntStream;

/** How often the hand moves inside a shape, on the way from the lowest string to the highest. */
final class HandMoves {
  private HandMoves() {}

  static int of(PlacedShape shape) {
    return (int)
        IntStream.range(1, shape.hands().size())
            .filter(row -> !shape.hands().get(row).equals(shape.hands().get(row - 1)))
            .count();
  }
}
