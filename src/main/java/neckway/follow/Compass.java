package neckway.follow;

import neckway.neck.GuitarString;
import neckway.neck.Tuning;

/**
 * What a guitar can play: from its lowest open string to the last fret of its highest string.
 *
 * @param lowestMidi MIDI note number
 * @param highestMidi MIDI note number
 */
public record Compass(int lowestMidi, int highestMidi) {
  /** Half a semitone, beyond which a guitar is in another tuning, and some for a stiff string. */
  private static final double MOST_FLAT_SEMITONES = 0.6;

  /** Of a guitar with so many frets. */
  public static Compass of(Tuning tuning, int frets) {
    int lowest = Integer.MAX_VALUE;
    int highest = Integer.MIN_VALUE;
    for (GuitarString string : tuning.strings()) {
      lowest = Math.min(lowest, tuning.openMidi(string));
      highest = Math.max(highest, tuning.openMidi(string) + frets);
    }
    return new Compass(lowest, highest);
  }

  /** The lowest note of a guitar as far out of tune as its tuning can be told. */
  public double lowestHz() {
    return 440 * Math.pow(2, (lowestMidi - MOST_FLAT_SEMITONES - 69) / 12);
  }

  /** Whether it has a note. */
  boolean has(int midi) {
    return midi >= lowestMidi && midi <= highestMidi;
  }
}
