package neckway.desk;

import java.util.List;
import java.util.stream.Collectors;
import neckway.drill.PlayableDrill;
import neckway.neck.Shape;

/** A drill as a player would say it. */
public final class DrillWords {
  private DrillWords() {}

  /** Key, shapes by their numbers and fret, such as "A major pentatonic, shape 1 to 2, fret 5". */
  public static String place(PlayableDrill drill) {
    return Texts.of("drill.place", drill.key(), shapes(drill.shapes()), drill.start());
  }

  /** The same with the tempo, beats a minute. */
  public static String title(PlayableDrill drill) {
    return Texts.of("drill.title", place(drill), Texts.plain(drill.pulse().tempo()));
  }

  /** What a shape is called, without its number. */
  public static String name(Shape shape) {
    return Texts.of("shape." + shape.word());
  }

  private static String shapes(List<Shape> shapes) {
    List<String> numbers =
        shapes.stream().map(shape -> Integer.toString(shape.number())).collect(Collectors.toList());
    return switch (numbers.size()) {
      case 1 -> Texts.of("drill.shape", numbers.get(0));
      case 2 -> Texts.of("drill.shape.pair", numbers.get(0), numbers.get(1));
      default -> Texts.of("drill.shapes", String.join(", ", numbers));
    };
  }
}
