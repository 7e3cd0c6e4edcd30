/**
 * How a guitar is learnt: the calibration sequence matched, each string's stiffness estimated.
 * Pure.
 */
package neckway.calibration;
