package neckway.neck;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;

/** The five pentatonic shapes, named by the degree of the major scale that their lowest note is. */
public enum Shape {
  MAJOR(0, "major"),
  DORIAN(2, "Dorian"),
  PHRYGIAN(4, "Phrygian"),
  MIXOLYDIAN(7, "Mixolydian"),
  MINOR(9, "minor");

  private final int semitonesAboveTonic;
  private final String spoken;

  Shape(int semitonesAboveTonic, String spoken) {
    this.semitonesAboveTonic = semitonesAboveTonic;
    this.spoken = spoken;
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
    String all = Arrays.stream(values()).map(Shape::spoken).collect(Collectors.joining(", "));
    throw new BadInput("unknown shape \"" + name + "\": the shapes are " + all);
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
    return spoken.toLowerCase(Locale.ROOT);
  }

  /** The name as it is written in a sentence. */
  public String spoken() {
    return spoken;
  }
}
