/** What a virtual player is: guitar, habits, behaviour, surroundings. Pure. */
package neckway.player.settings;
