package neckway.place;

/**
 * Learns from note to note whether the sound is full of exact harmonics, as an overdriven amplifier
 * makes them.
 */
public final class Drive {
  /** One note tells no more than this, nats. */
  static final double MOST_OF_ONE = 2;

  /** More than this is never taken as known, nats, since the player may turn a knob. */
  static final double MOST_OF_ALL = 6;

  private double evidence;

  /** The same reading, given what it and the notes before it tell of the sound. */
  public StiffnessReading known(StiffnessReading reading) {
    double one = Math.max(-MOST_OF_ONE, Math.min(MOST_OF_ONE, reading.drivenEvidence()));
    evidence = Math.max(-MOST_OF_ALL, Math.min(MOST_OF_ALL, evidence + one));
    return reading.givenDriven(1 / (1 + Math.exp(-evidence)));
  }
}
