package neckway.player.settings;

/**
 * How the player keeps time and touches the strings.
 *
 * @param biasMs steady earliness (negative) or lateness
 * @param jitterMs standard deviation of one note's time
 * @param driftMs how far the time wanders slowly to and fro
 * @param legatoShare share of the notes on one string that are hammered on or pulled off
 * @param slideShare share of the shifts that are slid
 * @param pluckedSlideShare share of the slid shifts whose landing is plucked anew
 * @param dampMs how long a note goes on once another string is struck, at the median
 * @param ringShare share of the notes that ring out slowly into what follows
 * @param muteMs how long the pick rests on the string before it is released
 * @param dynamicsDb standard deviation of the strength of strokes
 * @param pickPosition where strings are struck, as a share of the open string from the bridge
 * @param pickHardness 0 a thumb, 1 a hard pick
 * @param vibratoShare share of long notes with vibrato
 * @param squeakShare share of moves along wound strings that squeak
 * @param buzzShare share of notes that buzz on a fret
 */
public record Habits(
    double biasMs,
    double jitterMs,
    double driftMs,
    double legatoShare,
    double slideShare,
    double pluckedSlideShare,
    double dampMs,
    double ringShare,
    double muteMs,
    double dynamicsDb,
    double pickPosition,
    double pickHardness,
    double vibratoShare,
    double squeakShare,
    double buzzShare) {

  /** A tidy player with a plectrum. */
  public static Habits tidy() {
    return new Habits(0, 6, 4, 0, 0, 0.5, 15, 0, 5, 1.2, 0.14, 0.7, 0, 0, 0);
  }

  /** The same but for timing. */
  public Habits withTiming(double newBiasMs, double newJitterMs, double newDriftMs) {
    return new Habits(
        newBiasMs,
        newJitterMs,
        newDriftMs,
        legatoShare,
        slideShare,
        pluckedSlideShare,
        dampMs,
        ringShare,
        muteMs,
        dynamicsDb,
        pickPosition,
        pickHardness,
        vibratoShare,
        squeakShare,
        buzzShare);
  }

  /** The same but for the notes begun without a pluck. */
  public Habits withLegato(double newLegatoShare, double newSlideShare, double newPluckedShare) {
    return new Habits(
        biasMs,
        jitterMs,
        driftMs,
        newLegatoShare,
        newSlideShare,
        newPluckedShare,
        dampMs,
        ringShare,
        muteMs,
        dynamicsDb,
        pickPosition,
        pickHardness,
        vibratoShare,
        squeakShare,
        buzzShare);
  }

  /** The same but for how long notes go on. */
  public Habits withRing(double newDampMs, double newRingShare) {
    return new Habits(
        biasMs,
        jitterMs,
        driftMs,
        legatoShare,
        slideShare,
        pluckedSlideShare,
        newDampMs,
        newRingShare,
        muteMs,
        dynamicsDb,
        pickPosition,
        pickHardness,
        vibratoShare,
        squeakShare,
        buzzShare);
  }

  /** The same but for vibrato, squeaks and buzz. */
  public Habits withNoises(double newVibrato, double newSqueak, double newBuzz) {
    return new Habits(
        biasMs,
        jitterMs,
        driftMs,
        legatoShare,
        slideShare,
        pluckedSlideShare,
        dampMs,
        ringShare,
        muteMs,
        dynamicsDb,
        pickPosition,
        pickHardness,
        newVibrato,
        newSqueak,
        newBuzz);
  }

  /** The same but for the right hand. */
  public Habits withPick(double newMuteMs, double newDynamicsDb, double position, double hardness) {
    return new Habits(
        biasMs,
        jitterMs,
        driftMs,
        legatoShare,
        slideShare,
        pluckedSlideShare,
        dampMs,
        ringShare,
        newMuteMs,
        newDynamicsDb,
        position,
        hardness,
        vibratoShare,
        squeakShare,
        buzzShare);
  }
}
