package neckway.file.sound;

import java.util.OptionalLong;

/**
 * Where an MP4 file keeps the sound of its first AAC track, and which part of it is to be heard.
 *
 * @param config the decoder's setting (AudioSpecificConfig, ISO/IEC 14496-3, 1.6.2.1)
 * @param offsets where each AAC frame begins, bytes from the start of the file
 * @param sizes bytes of each AAC frame
 * @param timescale ticks a second of the times below
 * @param lastFrameTicks how long the last frame lasts: less than the others where it is filled up
 * @param startTicks where the sound begins in what is decoded; empty where the file tells nothing
 * @param lengthTicks how long it lasts from there; empty where it goes to the end
 */
record Mp4Sound(
    AacConfig config,
    long[] offsets,
    int[] sizes,
    long timescale,
    long lastFrameTicks,
    OptionalLong startTicks,
    OptionalLong lengthTicks) {}
