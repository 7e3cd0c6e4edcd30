package neckway.neck;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import neckway.words.Tongue;
import neckway.words.Wording;

/** The five pentatonic shapes, named by the degree of the major scale that their lowest note is. */
public enum Shape {
  MAJOR(0),
  DORIAN(2),
  PHRYGIAN(4),
  MIXOLYDIAN(7),
  MINOR(9);

  private final int semitonesAboveTonic;

  Shape(int semitonesAboveTonic) {
    this.semitonesAboveTonic = semitonesAboveTonic;
  }

  /**
   * Reads a shape's name, in capitals or not.
   *
   * @throws BadInput if there is no such shape
   */
  public static Shape parse(String name) {
    for (Shape shape : values()) {
      if (shape.word().equals(name.strip().toLowerCase(Locale.ROOT))) {
        return shape;
      }
    }
    throw new BadInput(Wording.of("music.shape.unknown", name, namesToType()));
  }

  /** As they are understood, whatever language is spoken. */
  private static String namesToType() {
    return Wording.in(
        Tongue.ENGLISH,
        () -> Arrays.stream(values()).map(Shape::spoken).collect(Collectors.joining(", ")));
  }

  /** Semitones from the major tonic up to the shape's first note: 0, 2, 4, 7 or 9. */
  public int semitonesAboveTonic() {
    return semitonesAboveTonic;
  }

  /** The next shape up the neck; after the minor one comes the major one again. */
  public Shape next() {
    return values()[(ordinal() + 1) % values().length];
  }

  /**
   * The number by which players count the shapes: 1 is the one whose lowest note is the root of the
   * major key. (Common practice, no source; some count from the minor shape.)
   */
  public int number() {
    return ordinal() + 1;
  }

  /** The name in files and options: all small letters. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The name as it is written in a sentence, in the language that is spoken. */
  public String spoken() {
    return Wording.of("shape." + word());
  }

  /** Neighbours as a sentence has them: "major to Dorian". */
  public static String spokenChain(List<Shape> chain) {
    return chain.stream()
        .map(Shape::spoken)
        .reduce((so, next) -> Wording.of("title.shapes", so, next))
        .orElseThrow();
  }
}
