package neckway.bench;

import java.util.OptionalDouble;
import java.util.Random;
import neckway.player.settings.Behaviour;
import neckway.player.settings.Guitar;
import neckway.player.settings.Habits;
import neckway.player.settings.PlayerSettings;
import neckway.player.surroundings.Amp;
import neckway.player.surroundings.ClickLeak;
import neckway.player.surroundings.Surroundings;

/**
 * Draws ordinary players by chance: in time within some milliseconds, notes damped as the next one
 * starts, a guitar near its tuning, and of amp, room, noise and click at most two at a time.
 */
final class OrdinaryDraw {
  private static final double MOST_DETUNE_CENTS = 8;

  /** Of guitars met in the practice room, as far off the fork as still passes unnoticed alone. */
  private static final double MOST_DIRTY_DETUNE_CENTS = 40;

  private final Random random;
  private final PlayerSettings.Condition condition;

  private OrdinaryDraw(Random random, PlayerSettings.Condition condition) {
    this.random = random;
    this.condition = condition;
  }

  /**
   * The same for the same seed; what the player's own draw gives stretches a long way beyond it.
   */
  static PlayerSettings settings(long seed, PlayerSettings.Condition condition) {
    return new OrdinaryDraw(new Random(seed * 0x9E3779B97F4A7C15L + 11), condition).draw();
  }

  private PlayerSettings draw() {
    boolean dirty =
        condition == PlayerSettings.Condition.DIRTY || condition == PlayerSettings.Condition.HARSH;
    Guitar.Model[] models = Guitar.Model.values();
    double detune = dirty && random.nextInt(6) == 0 ? MOST_DIRTY_DETUNE_CENTS : MOST_DETUNE_CENTS;
    Guitar guitar = models[random.nextInt(models.length)].any(random, detune);
    if (guitar.pickup() > 0) {
      guitar = withPickup(guitar, between(0.2, 0.3));
    }
    Surroundings around = dirty ? dirty() : clean();
    Habits habits =
        Habits.tidy()
            .withTiming(between(-4, 4), between(4, 9), between(0, 5))
            .withRing(between(2, dirty ? 8 : 3.5), 0)
            .withPick(between(2, 8), between(0.5, 1.2), between(0.12, 0.28), between(0.6, 1))
            .withNoises(between(0, 0.1), between(0, 0.1), 0);
    if (condition == PlayerSettings.Condition.LEGATO) {
      habits = habits.withLegato(between(0.05, 0.3), between(0.4, 1), between(0, 0.5));
    }
    return new PlayerSettings(
        guitar,
        habits,
        Behaviour.whole(),
        around,
        random.nextInt(4) == 0 ? 48_000 : 44_100,
        OptionalDouble.empty(),
        between(1.2, 2));
  }

  private static Guitar withPickup(Guitar guitar, double share) {
    return new Guitar(
        guitar.stiffness(),
        guitar.ringSeconds(),
        share,
        guitar.brightHz(),
        guitar.lossPerKhz2(),
        guitar.detuneCents(),
        guitar.stringCents(),
        guitar.fretCents(),
        guitar.woundStrings());
  }

  private Surroundings clean() {
    return around(Amp.Voicing.NONE, 0, between(60, 75), none(), none());
  }

  /** One of amp, room, noise and click, one time in two another besides. */
  private Surroundings dirty() {
    int one = random.nextInt(4);
    int other = random.nextBoolean() ? random.nextInt(4) : one;
    Amp.Voicing amp = has(0, one, other) ? voicing() : Amp.Voicing.NONE;
    double wet = has(1, one, other) ? between(0.1, 0.4) : 0;
    boolean noisy = has(2, one, other);
    OptionalDouble hum =
        noisy && random.nextBoolean() ? OptionalDouble.of(between(36, 56)) : none();
    OptionalDouble click = has(3, one, other) ? OptionalDouble.of(between(20, 36)) : none();
    return around(amp, wet, noisy ? between(40, 55) : between(55, 75), hum, click);
  }

  private Amp.Voicing voicing() {
    double draw = random.nextDouble();
    return draw < 0.3
        ? Amp.Voicing.CLEAN
        : draw < 0.6 ? Amp.Voicing.EDGE : draw < 0.95 ? Amp.Voicing.CRUNCH : Amp.Voicing.LEAD;
  }

  private Surroundings around(
      Amp.Voicing amp, double wet, double hissUnderDb, OptionalDouble hum, OptionalDouble click) {
    ClickLeak.Sound[] clicks = ClickLeak.Sound.values();
    return new Surroundings(
        amp,
        wet,
        between(0.2, 0.6),
        OptionalDouble.of(hissUnderDb),
        hum,
        random.nextBoolean() ? 50 : 60,
        click,
        clicks[random.nextInt(clicks.length)],
        between(-18, -3),
        0,
        false);
  }

  private static boolean has(int what, int one, int other) {
    return what == one || what == other;
  }

  private static OptionalDouble none() {
    return OptionalDouble.empty();
  }

  private double between(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }
}
