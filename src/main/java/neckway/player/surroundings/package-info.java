/** What comes between strings and file: amplifier, room, noise, click. Pure. */
package neckway.player.surroundings;
