package neckway.hand;

import neckway.neck.Place;

/**
 * A place where a note may have been played.
 *
 * @param place string and fret
 * @param p probability, 0 to 1
 */
public record PlaceGuess(Place place, double p) {}
