package neckway.bench;

/**
 * A note that is in a take.
 *
 * @param time onset in seconds from the first sample (of a slid or hammered one, the arrival)
 * @param midi MIDI note number that was meant by the place fretted
 * @param string as players number them; 0 where it is not known
 * @param fret 0 for the open string
 * @param note how it sounds, in a few words, for the list of errors
 */
public record TrueNote(double time, int midi, int string, int fret, String note) {}
