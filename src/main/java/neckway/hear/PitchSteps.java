package neckway.hear;

/** Distances of pitches, in semitones, that more than one part of the ear asks about. */
final class PitchSteps {
  /** Nearer than this is the same fret; under vibrato a pitch wanders by half a semitone. */
  static final double SAME = 0.6;

  /** Nearer than this is the next fret: halfway from one semitone to two. */
  static final double NEXT_FRET = 1.5;

  private PitchSteps() {}
}
