package neckway.player.settings;

import java.util.OptionalDouble;
import java.util.Random;
import neckway.player.surroundings.Surroundings;

/**
 * Everything about a virtual player but the route, the mistakes and the seed.
 *
 * @param guitar the instrument
 * @param habits time and touch
 * @param behaviour what is done with the route as a whole
 * @param surroundings amp, room, noise, click, level
 * @param sampleRate Hz, 8,000 to 192,000
 * @param firstBeat seconds to the beat of step 0; empty: a short lead and the count-in
 * @param tailSeconds how long the take goes on after the last note
 */
public record PlayerSettings(
    Guitar guitar,
    Habits habits,
    Behaviour behaviour,
    Surroundings surroundings,
    int sampleRate,
    OptionalDouble firstBeat,
    double tailSeconds) {

  /** The conditions that figures are given for. */
  public enum Condition {
    /** Line signal, plucked. */
    CLEAN,
    /** Amp, noise, room, click leak, as they are met: one or two of them at a time. */
    DIRTY,
    /** The same, but any amp up to lead and everything at once, soft and loud. */
    HARSH,
    /** Line signal, many notes slid, hammered on and pulled off. */
    LEGATO
  }

  public PlayerSettings {
    if (sampleRate < 8_000 || sampleRate > 192_000) {
      throw new IllegalArgumentException("sample rate " + sampleRate + " Hz");
    }
  }

  /** A tidy player on a plain electric guitar, straight into the line, at 44.1 kHz. */
  public static PlayerSettings plain() {
    return new PlayerSettings(
        Guitar.Model.ELECTRIC.plain(),
        Habits.tidy(),
        Behaviour.whole(),
        Surroundings.line(),
        44_100,
        OptionalDouble.empty(),
        2);
  }

  /** A player as chance has it, the same for the same seed. */
  public static PlayerSettings random(long seed, Condition condition) {
    return SettingsDraw.draw(new Random(seed * 0x9E3779B97F4A7C15L + 7), condition);
  }

  public PlayerSettings withGuitar(Guitar g) {
    return new PlayerSettings(
        g, habits, behaviour, surroundings, sampleRate, firstBeat, tailSeconds);
  }

  public PlayerSettings withHabits(Habits h) {
    return new PlayerSettings(
        guitar, h, behaviour, surroundings, sampleRate, firstBeat, tailSeconds);
  }

  public PlayerSettings withBehaviour(Behaviour b) {
    return new PlayerSettings(guitar, habits, b, surroundings, sampleRate, firstBeat, tailSeconds);
  }

  public PlayerSettings withSurroundings(Surroundings s) {
    return new PlayerSettings(guitar, habits, behaviour, s, sampleRate, firstBeat, tailSeconds);
  }

  public PlayerSettings withSampleRate(int hz) {
    return new PlayerSettings(guitar, habits, behaviour, surroundings, hz, firstBeat, tailSeconds);
  }

  public PlayerSettings withFirstBeat(double seconds) {
    return new PlayerSettings(
        guitar,
        habits,
        behaviour,
        surroundings,
        sampleRate,
        OptionalDouble.of(seconds),
        tailSeconds);
  }

  public PlayerSettings withTailSeconds(double seconds) {
    return new PlayerSettings(
        guitar, habits, behaviour, surroundings, sampleRate, firstBeat, seconds);
  }
}
