package neckway.neck;

/**
 * One note of a shape on the neck.
 *
 * @param place where it is
 * @param midi MIDI note number that sounds there
 * @param finger 1 to 4, or 0 for an open string
 */
public record PlacedNote(Place place, int midi, int finger) {}
