package neckway.neck;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import neckway.words.Wording;

/**
 * Shapes of a key on the neck, and every join between neighbours.
 *
 * @param neck where
 * @param shapes in their places
 * @param joins those of each pair, best first, one pair after the other
 * @param chain whether each shape starts on the second note of the one before
 */
public record NeckMap(Neck neck, List<PlacedShape> shapes, List<Join> joins, boolean chain) {
  public NeckMap {
    shapes = List.copyOf(shapes);
    joins = List.copyOf(joins);
  }

  /**
   * All five shapes, each in the lowest place where it fits whole; a shape that fits nowhere is
   * left out. The joins of a pair are those from the lower shape's place upwards.
   *
   * @throws BadInput if no shape fits at all
   */
  public static NeckMap ofAll(Neck neck) {
    List<PlacedShape> placed =
        Arrays.stream(Shape.values()).map(neck::lowest).flatMap(Optional::stream).toList();
    if (placed.isEmpty()) {
      throw new BadInput(Wording.of("music.neck.noShape", neck.tuning(), neck.key()));
    }
    List<Join> joins = new ArrayList<>();
    for (PlacedShape lower : placed) {
      neck.neighbourAbove(lower)
          .ifPresent(upper -> joins.addAll(Joins.between(lower, upper, neck.tuning().strings())));
    }
    return new NeckMap(neck, placed, joins, false);
  }

  /**
   * A chain of neighbours.
   *
   * @param shapes one to five, low to high
   * @param start fret of the first note; left out, the lowest place where all of them fit
   * @throws BadInput as {@link Neck#chain}
   */
  public static NeckMap ofChain(Neck neck, List<Shape> shapes, OptionalInt start) {
    List<PlacedShape> placed = neck.chain(shapes, start);
    List<Join> joins = new ArrayList<>();
    RouteBuilder.pairs(neck, placed).forEach(joins::addAll);
    return new NeckMap(neck, placed, joins, true);
  }

  /** The joins from a shape to its neighbour above, best first. */
  public List<Join> joinsAbove(Shape lower) {
    return joins.stream().filter(join -> join.lower() == lower).toList();
  }
}
