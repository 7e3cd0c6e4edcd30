package neckway.neck;

/**
 * One note of a route as it is to be played.
 *
 * @param index from 0, over the whole take (rounds run on)
 * @param place where it is played
 * @param midi MIDI note number of that place
 * @param finger 1 to 4, or 0 for an open string
 * @param stand index into the route's chain of shapes, from 0: the shape the hand is in
 */
public record Step(int index, Place place, int midi, int finger, int stand) {}
