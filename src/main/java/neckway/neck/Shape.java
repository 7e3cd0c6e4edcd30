package neckway.neck;

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

  /** Semitones from the major tonic up to the shape's first note: 0, 2, 4, 7 or 9. */
  public int semitonesAboveTonic() {
    return semitonesAboveTonic;
  }

  /** The next shape up the neck; after the minor one comes the major one again. */
  public Shape next() {
    return values()[(ordinal() + 1) % values().length];
  }
}
