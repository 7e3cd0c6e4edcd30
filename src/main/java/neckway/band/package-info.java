/** What is played under the player: chords, bass and drums, written out and made to sound. */
package neckway.band;
