package neckway.player.settings;

/**
 * How the player keeps time and touches the strings.
 *
 * @param timing against the pulse
 * @param legato notes that are begun without a pluck
 * @param ring how long notes go on
 * @param pick the right hand
 * @param noises what sounds besides
 */
public record Habits(Timing timing, Legato legato, Ring ring, Pick pick, Noises noises) {
  /**
   * Time against the pulse.
   *
   * @param biasMs steady earliness (negative) or lateness
   * @param jitterMs standard deviation of one note's time
   * @param driftMs how far the time wanders slowly to and fro
   */
  public record Timing(double biasMs, double jitterMs, double driftMs) {}

  /**
   * Notes begun without a pluck, shares from 0 to 1.
   *
   * @param share of the notes on one string that are hammered on or pulled off
   * @param slideShare of the shifts that are slid
   * @param pluckedSlideShare of the slid shifts whose landing is plucked anew
   */
  public record Legato(double share, double slideShare, double pluckedSlideShare) {}

  /**
   * How long notes go on.
   *
   * @param dampMs once another string is struck, at the median
   * @param share of the notes that ring out slowly into what follows, 0 to 1
   */
  public record Ring(double dampMs, double share) {}

  /**
   * The right hand.
   *
   * @param muteMs how long the pick rests on the string before it is released
   * @param dynamicsDb standard deviation of the strength of strokes
   * @param position where strings are struck, as a share of the open string from the bridge
   * @param hardness 0 a thumb, 1 a hard pick
   */
  public record Pick(double muteMs, double dynamicsDb, double position, double hardness) {}

  /**
   * What sounds besides, shares from 0 to 1.
   *
   * @param vibratoShare of the notes
   * @param squeakShare of the moves along wound strings that squeak
   * @param buzzShare of the notes that buzz on a fret
   */
  public record Noises(double vibratoShare, double squeakShare, double buzzShare) {}

  /** A tidy player with a plectrum. */
  public static Habits tidy() {
    return new Habits(
        new Timing(0, 6, 4),
        new Legato(0, 0, 0.5),
        new Ring(15, 0),
        new Pick(5, 1.2, 0.14, 0.7),
        new Noises(0, 0, 0));
  }

  /** The same but for timing. */
  public Habits withTiming(double biasMs, double jitterMs, double driftMs) {
    return new Habits(new Timing(biasMs, jitterMs, driftMs), legato, ring, pick, noises);
  }

  /** The same but for the notes begun without a pluck. */
  public Habits withLegato(double share, double slideShare, double pluckedSlideShare) {
    return new Habits(timing, new Legato(share, slideShare, pluckedSlideShare), ring, pick, noises);
  }

  /** The same but for how long notes go on. */
  public Habits withRing(double dampMs, double share) {
    return new Habits(timing, legato, new Ring(dampMs, share), pick, noises);
  }

  /** The same but for the right hand. */
  public Habits withPick(double muteMs, double dynamicsDb, double position, double hardness) {
    return new Habits(
        timing, legato, ring, new Pick(muteMs, dynamicsDb, position, hardness), noises);
  }

  /** The same but for vibrato, squeaks and buzz. */
  public Habits withNoises(double vibratoShare, double squeakShare, double buzzShare) {
    return new Habits(timing, legato, ring, pick, new Noises(vibratoShare, squeakShare, buzzShare));
  }
}
