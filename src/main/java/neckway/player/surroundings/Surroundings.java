package neckway.player.surroundings;

import java.util.OptionalDouble;

/**
 * What comes between the strings and the file. Levels marked "under" are dB below the guitar's
 * peak, as positive numbers; empty means none.
 *
 * @param amp the amplifier
 * @param roomWet share of the room in the sound, 0 to 1
 * @param roomSeconds the room's reverberation time (60 dB)
 * @param hissUnderDb hiss, root mean square
 * @param humUnderDb mains hum, root mean square
 * @param humHz 50 or 60
 * @param clickUnderDb the click's leak, peak
 * @param clickSound which click
 * @param levelDbfs peak of the guitar in the file, -60 to 0
 * @param dcOffset added to every sample, -0.2 to 0.2
 * @param phone whether a telephone's band is all that is left
 */
public record Surroundings(
    Amp.Voicing amp,
    double roomWet,
    double roomSeconds,
    OptionalDouble hissUnderDb,
    OptionalDouble humUnderDb,
    double humHz,
    OptionalDouble clickUnderDb,
    ClickLeak.Sound clickSound,
    double levelDbfs,
    double dcOffset,
    boolean phone) {

  /** Straight into the line: next to no noise. */
  public static Surroundings line() {
    return new Surroundings(
        Amp.Voicing.NONE,
        0,
        0.3,
        OptionalDouble.of(64),
        OptionalDouble.empty(),
        50,
        OptionalDouble.empty(),
        ClickLeak.Sound.SINE,
        -6,
        0,
        false);
  }
}
