package neckway.hear;

import java.util.Arrays;
import java.util.BitSet;
import java.util.OptionalDouble;

/** The pitch that each note came to while it sounded, and the guitar's tuning from them. */
final class SettledPitches {
  /** Estimates that make a note's pitch sure. Set on development takes. */
  private static final int LEAST_ESTIMATES = 4;

  /** Estimates that make it sure that a pitch stood still. */
  private static final int STEADY_ESTIMATES = 8;

  /**
   * Mean distance of a steady pitch's estimates from their mean, semitones, at most. Of 307 plucked
   * notes through phones 98 in 100 kept within 0.049; of 142 spoken sounds that lasted as long 5 in
   * 100 did.
   */
  private static final double STEADY_SEMITONES = 0.06;

  private final TuningOffset tuning = new TuningOffset();
  private double[] pitches = new double[256];
  private final BitSet unsteady = new BitSet();
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
    if (notes > 0) {
      settle(note);
      unsteady.set(notes - 1, !isSteady(note));
    }
  }

  /** The take is over while the last note sounds: it had no time to stand still. */
  void end(SoundingNote note) {
    if (notes > 0) {
      settle(note);
      unsteady.set(notes - 1, note.estimates() >= STEADY_ESTIMATES && !isSteady(note));
    }
  }

  private void settle(SoundingNote note) {
    if (note.estimates() >= LEAST_ESTIMATES) {
      pitches[notes - 1] = note.pitch();
    }
    if (isSteady(note)) {
      tuning.add(note.pitch());
    }
  }

  private static boolean isSteady(SoundingNote note) {
    return note.estimates() >= STEADY_ESTIMATES && note.wander() <= STEADY_SEMITONES;
  }

  /** Whether a note that is over had a pitch that stood still, as a string's does. */
  boolean isSteady(int index) {
    return !unsteady.get(index);
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
