/**
 * Which string: the stiffness that is in a note's sound, weighed by what is known of the guitar.
 * Pure.
 */
package neckway.string;
