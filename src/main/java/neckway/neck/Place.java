package neckway.neck;

/**
 * One place on the neck.
 *
 * @param string the string
 * @param fret 0 for the open string
 */
public record Place(GuitarString string, int fret) {
  public Place {
    if (fret < 0) {
      throw new IllegalArgumentException("fret " + fret + ": frets count from 0, the open string");
    }
  }

  /** As tab is spoken of: string, colon, fret. */
  @Override
  public String toString() {
    return string + ":" + fret;
  }
}
