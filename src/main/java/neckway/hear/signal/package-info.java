/**
 * Samples cleaned and measured: rumble, hum and clicks taken out; level, energy, spectral flux,
 * period, onset. Knows no notes. Pure.
 */
package neckway.hear.signal;
