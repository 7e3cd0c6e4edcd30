package neckway.player.settings;

import java.util.OptionalDouble;
import java.util.Random;
import neckway.player.surroundings.Amp;
import neckway.player.surroundings.ClickLeak;
import neckway.player.surroundings.Surroundings;

/** Draws players by chance, for benchmarks and tests. */
final class SettingsDraw {
  private SettingsDraw() {}

  static PlayerSettings draw(Random random, PlayerSettings.Condition condition) {
    boolean harsh = condition == PlayerSettings.Condition.HARSH;
    boolean dirty = harsh || condition == PlayerSettings.Condition.DIRTY;
    boolean legato = condition == PlayerSettings.Condition.LEGATO;
    Guitar.Model[] models = Guitar.Model.values();
    Guitar guitar = models[random.nextInt(models.length)].any(random, detuneRange(random, dirty));
    Surroundings around = harsh ? harsh(random) : dirty ? dirty(random) : clean(random);
    Habits habits =
        Habits.tidy()
            .withTiming(between(random, -15, 15), between(random, 2, 14), between(random, 0, 8))
            .withRing(between(random, 4, 35), between(random, 0, mostRinging(dirty, around.amp())))
            .withPick(
                between(random, 2, 14),
                between(random, 0.5, dirty ? 3 : 2),
                between(random, 0.07, 0.28),
                between(random, 0.1, 1))
            .withNoises(
                between(random, 0, 0.3),
                between(random, 0, 0.5),
                dirty ? between(random, 0, 0.1) : 0);
    if (legato) {
      habits =
          habits.withLegato(
              between(random, 0.3, 0.8), between(random, 0.4, 1), between(random, 0, 0.5));
    }
    return new PlayerSettings(
        guitar,
        habits,
        Behaviour.whole(),
        around,
        random.nextInt(4) == 0 ? 48_000 : 44_100,
        OptionalDouble.empty(),
        between(random, 1.2, 2.5));
  }

  private static Surroundings clean(Random random) {
    return new Surroundings(
        Amp.Voicing.NONE,
        0,
        0.3,
        OptionalDouble.of(between(random, 58, 80)),
        OptionalDouble.empty(),
        50,
        OptionalDouble.empty(),
        ClickLeak.Sound.SINE,
        between(random, -20, -1),
        0,
        false);
  }

  private static Surroundings dirty(Random random) {
    Amp.Voicing[] voicings = {
      Amp.Voicing.NONE, Amp.Voicing.CLEAN, Amp.Voicing.EDGE, Amp.Voicing.CRUNCH, Amp.Voicing.LEAD
    };
    double draw = random.nextDouble();
    int voicing = draw < 0.3 ? 0 : draw < 0.5 ? 1 : draw < 0.72 ? 2 : draw < 0.94 ? 3 : 4;
    ClickLeak.Sound[] clicks = ClickLeak.Sound.values();
    return new Surroundings(
        voicings[voicing],
        random.nextInt(5) < 2 ? between(random, 0.05, 0.4) : 0,
        between(random, 0.2, 0.8),
        OptionalDouble.of(random.nextBoolean() ? between(random, 36, 58) : between(random, 58, 75)),
        random.nextInt(3) == 0
            ? OptionalDouble.of(between(random, 26, 60))
            : OptionalDouble.empty(),
        random.nextBoolean() ? 50 : 60,
        random.nextInt(5) < 2 ? OptionalDouble.of(between(random, 14, 36)) : OptionalDouble.empty(),
        clicks[random.nextInt(clicks.length)],
        between(random, -30, -1),
        random.nextInt(4) == 0 ? between(random, -0.005, 0.005) : 0,
        random.nextInt(16) == 0);
  }

  private static Surroundings harsh(Random random) {
    Amp.Voicing[] voicings = Amp.Voicing.values();
    ClickLeak.Sound[] clicks = ClickLeak.Sound.values();
    boolean room = random.nextInt(3) > 0;
    return new Surroundings(
        voicings[random.nextInt(voicings.length)],
        room ? between(random, 0.05, 0.4) : 0,
        between(random, 0.2, 0.8),
        OptionalDouble.of(between(random, 34, 60)),
        random.nextBoolean() ? OptionalDouble.of(between(random, 26, 60)) : OptionalDouble.empty(),
        random.nextBoolean() ? 50 : 60,
        random.nextInt(3) > 0 ? OptionalDouble.of(between(random, 14, 36)) : OptionalDouble.empty(),
        clicks[random.nextInt(clicks.length)],
        between(random, -40, -1),
        random.nextInt(3) == 0 ? between(random, -0.005, 0.005) : 0,
        random.nextInt(8) == 0);
  }

  /** Two notes at once through a driven amp are a noise that players learn to damp. */
  private static double mostRinging(boolean dirty, Amp.Voicing amp) {
    return switch (amp) {
      case LEAD, CRUNCH -> 0.05;
      case EDGE -> 0.2;
      case NONE, CLEAN -> dirty ? 0.4 : 0.08;
    };
  }

  /** Most guitars are tuned within a few cents of the fork; one in four is well off it. */
  private static double detuneRange(Random random, boolean dirty) {
    return dirty && random.nextInt(4) == 0 ? 45 : 15;
  }

  private static double between(Random random, double low, double high) {
    return low + (high - low) * random.nextDouble();
  }
}
