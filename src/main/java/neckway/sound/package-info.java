/** Devices: capture, playback, click, round trip. */
package neckway.sound;
