package neckway.bench;

import java.util.Random;
import neckway.drill.PlayableDrill;
import neckway.player.settings.PlayerSettings;
import neckway.player.settings.PlayerSettings.Condition;

/** Which drills and players a take is drawn from. */
public enum Population {
  /**
   * What is met in a practice room on most days. How difficult it is was set by what a general note
   * tracker, aubio, makes of it, and by nothing else; see {@link AubioBench}.
   */
  ORDINARY {
    @Override
    PlayableDrill drill(Random random) {
      return new RandomDrills(random).ordinary();
    }

    @Override
    PlayerSettings settings(long seed, Condition condition) {
      return OrdinaryDraw.settings(seed, condition);
    }

    @Override
    int slips(Random random) {
      return random.nextBoolean() ? 0 : 1 + random.nextInt(3);
    }
  },
  /** As far out as players, guitars and rooms go, all at once. */
  HARD {
    @Override
    PlayableDrill drill(Random random) {
      return new RandomDrills(random).any();
    }

    @Override
    PlayerSettings settings(long seed, Condition condition) {
      return PlayerSettings.random(seed, condition);
    }

    @Override
    int slips(Random random) {
      return random.nextInt(5);
    }
  };

  abstract PlayableDrill drill(Random random);

  abstract PlayerSettings settings(long seed, Condition condition);

  /** How many slips a take has. */
  abstract int slips(Random random);

  /** A stream of its own for each population, condition and seed. */
  Random random(long seed, Condition condition) {
    long stream = this == HARD ? condition.ordinal() : 100 + condition.ordinal();
    return new Random(seed * 1_000_003 + stream);
  }

  /** In the list of takes. */
  String word(Condition condition) {
    return this == HARD ? condition.toString() : "ordinary " + condition;
  }
}
