package neckway.player.voice;

/**
 * How a string is set going.
 *
 * @param strength amplitude, 1 for a middling stroke
 * @param ringSeconds time constant of the fundamental
 * @param pickAt where it is struck, as a share of the sounding length
 * @param pickupAt where it is picked up, as a share of the sounding length
 * @param brightHz above this the partials fall off
 * @param planesCents how much sharper the string is in its second plane
 */
record Stroke(
    double strength,
    double ringSeconds,
    double pickAt,
    double pickupAt,
    double brightHz,
    double planesCents) {}
