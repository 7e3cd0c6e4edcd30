/** Recordings: WAV, AIFF, AU, FLAC, MP3 and Ogg Vorbis read as mono sound; WAV written. */
package neckway.file.sound;
