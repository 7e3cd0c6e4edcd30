package neckway.player.settings;

import java.util.Optional;
import java.util.OptionalInt;
import neckway.player.settings.Behaviour.Stranger;

/** What players do with a route as a whole, for tests. */
public final class Behaviours {
  private Behaviours() {}

  /** The route with some mistakes drawn by chance. */
  public static Behaviour withMistakes(int count) {
    return new Behaviour(
        OptionalInt.empty(), OptionalInt.empty(), 0, 0, 0, count, false, Optional.empty());
  }

  /** The route broken off and begun again from the bottom. */
  public static Behaviour again(int afterStep, int pauseSlots) {
    return new Behaviour(
        OptionalInt.empty(),
        OptionalInt.of(afterStep),
        pauseSlots,
        0,
        0,
        0,
        false,
        Optional.empty());
  }

  /** The route up to a step. */
  public static Behaviour stop(int afterStep) {
    return new Behaviour(
        OptionalInt.of(afterStep), OptionalInt.empty(), 0, 0, 0, 0, false, Optional.empty());
  }

  /** The whole route some slots later than the click. */
  public static Behaviour late(int slots) {
    return new Behaviour(
        OptionalInt.empty(), OptionalInt.empty(), 0, slots, 0, 0, false, Optional.empty());
  }

  /** The whole route some semitones away. */
  public static Behaviour transposed(int semitones) {
    return new Behaviour(
        OptionalInt.empty(), OptionalInt.empty(), 0, 0, semitones, 0, false, Optional.empty());
  }

  /** Two slips within two steps. */
  public static Behaviour crowded() {
    return new Behaviour(
        OptionalInt.empty(), OptionalInt.empty(), 0, 0, 0, 0, true, Optional.empty());
  }

  /** Something else than the route. */
  public static Behaviour strange(Stranger stranger) {
    return new Behaviour(
        OptionalInt.empty(), OptionalInt.empty(), 0, 0, 0, 0, false, Optional.of(stranger));
  }
}
