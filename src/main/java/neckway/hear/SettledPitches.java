package neckway.hear;

import java.util.Arrays;
import java.util.OptionalDouble;

/** The pitch that each note came to while it sounded, and the guitar's tuning from them. */
final class SettledPitches {
  /** Estimates that make a note's pitch sure. Set on development takes. */
  private static final int LEAST_ESTIMATES = 4;

  private final TuningOffset tuning = new TuningOffset();
  private double[] pitches = new double[256];
  private int notes;

  /** Opens another note with the pitch it is told with. */
  void open(double pitch) {
    if (notes == pitches.length) {
      pitches = Arrays.copyOf(pitches, 2 * notes);
    }
    pitches[notes++] = pitch;
  }

  /** The last note is over: what its pitch came to is kept. */
  void close(SoundingNote note) {
    if (notes > 0 && note.estimates() >= LEAST_ESTIMATES) {
      pitches[notes - 1] = note.pitch();
      tuning.add(note.pitch());
    }
  }

  /** Notes opened so far. */
  int count() {
    return notes;
  }

  double pitch(int index) {
    return pitches[index];
  }

  /** A pitch as it would be on a guitar tuned to A4 = 440 Hz. */
  double inTune(double pitch) {
    return pitch - tuning.semitones();
  }

  /** Cents that the guitar is off, once enough notes tell it. */
  OptionalDouble tuningCents() {
    return tuning.cents();
  }
}
