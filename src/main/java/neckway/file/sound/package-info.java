/**
 * Recordings: WAV, AIFF, AU, FLAC, MP3, Ogg Vorbis, Ogg Opus and AAC in MP4 read as mono sound; WAV
 * written.
 */
package neckway.file.sound;
