package neckway.review;

import java.util.OptionalDouble;

/**
 * A take's own figures.
 *
 * @param seconds length
 * @param sampleRateHz frames a second
 * @param peakDbfs highest sample, dB of full scale
 * @param noiseDbfs level of the quiet between notes, dB of full scale
 * @param tuningCents the guitar's offset from A4 = 440 Hz, if enough notes tell it
 */
public record TakeFigures(
    double seconds,
    double sampleRateHz,
    double peakDbfs,
    double noiseDbfs,
    OptionalDouble tuningCents) {}
