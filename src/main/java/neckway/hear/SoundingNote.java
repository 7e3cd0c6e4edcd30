package neckway.hear;

/** The note that sounds, with the periods of the two before it, whose strings may still ring. */
final class SoundingNote {
  /** The newest estimate moves the pitch by this share at least, so that it follows a bend. */
  private static final double LEAST_WEIGHT = 0.1;

  private final double[] ringingPeriods = new double[NewNotePitch.OLD_NOTES];
  private boolean sounds;
  private double pitch;
  private double periodFrames;
  private double power;
  private long onsetFrame;
  private int estimates;
  private double wander;

  /**
   * Another note takes its place.
   *
   * @param power mean square of its sound
   */
  void begin(NewNote note, double power) {
    ringingPeriods[2] = ringingPeriods[1];
    ringingPeriods[1] = periodFrames;
    sounds = true;
    pitch = note.pitch();
    periodFrames = note.periodFrames();
    onsetFrame = note.onsetFrame();
    estimates = note.estimates();
    wander = 0;
    this.power = power;
  }

  /** Takes another estimate of its pitch and period into their means. */
  void refine(double pitch, double periodFrames) {
    estimates++;
    double weight = Math.max(LEAST_WEIGHT, 1.0 / estimates);
    wander += weight * (Math.abs(pitch - this.pitch) - wander);
    this.pitch += weight * (pitch - this.pitch);
    this.periodFrames += weight * (periodFrames - this.periodFrames);
  }

  /** Mean distance, in semitones, of the newest estimates from the pitch that it came to. */
  double wander() {
    return wander;
  }

  /** Whether there is one yet. */
  boolean sounds() {
    return sounds;
  }

  /** Whether it sounds and another pitch is as good as its own. */
  boolean isOf(double otherPitch) {
    return sounds && distance(otherPitch) < PitchSteps.SAME;
  }

  /** Semitones to another pitch, 0 or more. */
  double distance(double otherPitch) {
    return Math.abs(otherPitch - pitch);
  }

  /** MIDI note number with its fraction. */
  double pitch() {
    return pitch;
  }

  /** At half the front end's rate; 0 while nothing sounds. */
  double periodFrames() {
    return periodFrames;
  }

  /** Its period first, then those of the notes before it; 0 for none. */
  double[] ringingPeriods() {
    ringingPeriods[0] = periodFrames;
    return ringingPeriods;
  }

  /** Mean square of its sound when it was told. */
  double power() {
    return power;
  }

  /** Where it began, in frames of the front end. */
  long onsetFrame() {
    return onsetFrame;
  }

  /** Estimates of its pitch so far. */
  int estimates() {
    return estimates;
  }
}
