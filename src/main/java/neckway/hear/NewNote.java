package neckway.hear;

/**
 * A note that was found, as the ear's own parts tell it to each other.
 *
 * @param onsetFrame where it begins, in frames of the front end
 * @param pitch MIDI note number with its fraction
 * @param periodFrames at half the front end's rate
 * @param start how it began
 * @param estimates of its pitch that were taken before it was told
 */
record NewNote(
    long onsetFrame, double pitch, double periodFrames, HeardNote.Start start, int estimates) {}
