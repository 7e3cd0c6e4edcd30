package neckway.string;

import java.util.stream.DoubleStream;

/**
 * Learns from note to note whether the sound is full of exact harmonics, as an overdriven amplifier
 * makes them.
 */
public final class Drive {
  /** One note tells no more than this, nats. */
  static final double MOST_OF_ONE = 2;

  /** More than this is never taken as known, nats, since the player may turn a knob. */
  static final double MOST_OF_ALL = 6;

  /** The same of the notes of a whole take that is heard at one setting. */
  private static final double MOST_OF_ONE_IN_TAKE = 3;

  private static final double MOST_OF_TAKE = 7;

  /** Of the notes of an amplifier at the edge of breakup so many sound like clean ones. */
  private static final double SEEMINGLY_CLEAN = 0.5;

  private double evidence;

  /**
   * Probability that a take at one setting of the amplifier is driven. Clean sound has no notes
   * that are full of exact harmonics, but not all need be for the amplifier to be heard.
   *
   * @param notes what each tells ({@link StiffnessEstimate#drivenEvidence}), nats
   */
  public static double ofTake(DoubleStream notes) {
    double all =
        notes
            .map(
                one ->
                    Math.log(
                        SEEMINGLY_CLEAN
                            + (1 - SEEMINGLY_CLEAN) * Math.exp(Math.min(MOST_OF_ONE_IN_TAKE, one))))
            .sum();
    return 1 / (1 + Math.exp(-Math.max(-MOST_OF_TAKE, Math.min(MOST_OF_TAKE, all))));
  }

  /** The same estimate, given what it and the notes before it tell of the sound. */
  public StiffnessEstimate known(StiffnessEstimate estimate) {
    double one = Math.max(-MOST_OF_ONE, Math.min(MOST_OF_ONE, estimate.drivenEvidence()));
    evidence = Math.max(-MOST_OF_ALL, Math.min(MOST_OF_ALL, evidence + one));
    return estimate.givenDriven(1 / (1 + Math.exp(-evidence)));
  }
}
