/** Samples to notes: level, onset, pitch, note; the tuner. No javax.sound, no JavaFX. */
package neckway.hear;
