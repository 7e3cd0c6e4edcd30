package neckway.neck;

/**
 * A shift that a route asks for.
 *
 * @param round from 0
 * @param direction up or down
 * @param pair index of the lower shape in the route's chain, from 0
 * @param string where it is planned
 * @param finger the finger that plays the landing note
 * @param landingStep index of the step that is the landing note, the first one in the new stand
 */
public record PlannedShift(
    int round, Direction direction, int pair, GuitarString string, int finger, int landingStep) {}
