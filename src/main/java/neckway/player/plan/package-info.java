/** What the virtual player is going to play, mistakes and all, before any sound is made. Pure. */
package neckway.player.plan;
