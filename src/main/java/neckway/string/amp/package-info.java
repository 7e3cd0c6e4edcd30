/**
 * Which string, through an overdriven amplifier: string and amplifier fitted to one note's
 * harmonics together. Pure.
 */
package neckway.string.amp;
