package neckway.hear.beside;

/**
 * Where a known sound lies in a take.
 *
 * @param startsSeconds where its first sample sounds in the take; below 0 where it began earlier
 * @param drift how much faster its clock ran than the take's, as a share: 5e-5 is fifty millionths
 */
public record Alignment(double startsSeconds, double drift) {}
