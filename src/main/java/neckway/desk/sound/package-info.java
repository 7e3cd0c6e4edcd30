/** The sound room: devices, level, tuner, round trip and guitar. */
package neckway.desk.sound;
