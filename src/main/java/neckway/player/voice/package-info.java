/** The sound of strings and fingers. Pure. */
package neckway.player.voice;
