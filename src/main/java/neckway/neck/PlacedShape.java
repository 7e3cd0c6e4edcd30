package neckway.neck;

import java.util.List;

/**
 * A shape in one place on the neck, with its fingers.
 *
 * @param shape which one
 * @param start fret of its first note, on the lowest string
 * @param notes in the order of the way up, two a string
 * @param hands by string from the lowest: the fret under the first finger while that string is
 *     played; the hand covers four frets from there
 */
public record PlacedShape(Shape shape, int start, List<PlacedNote> notes, List<Integer> hands) {
  public PlacedShape {
    notes = List.copyOf(notes);
    hands = List.copyOf(hands);
    if (notes.size() != 2 * hands.size()) {
      throw new IllegalArgumentException(notes.size() + " notes on " + hands.size() + " strings");
    }
  }

  /** The lower note on a string. */
  public PlacedNote first(GuitarString string) {
    return notes.get(2 * row(string));
  }

  /** The higher note on a string. */
  public PlacedNote second(GuitarString string) {
    return notes.get(2 * row(string) + 1);
  }

  /** The fret under the first finger while a string is played. */
  public int hand(GuitarString string) {
    return hands.get(row(string));
  }

  private int row(GuitarString string) {
    return hands.size() - string.number();
  }
}
