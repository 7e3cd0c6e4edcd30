/** The virtual player: renders a drill as sound, with the truth. Pure. */
package neckway.player;
