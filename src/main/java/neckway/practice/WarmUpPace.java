package neckway.practice;

import java.util.Optional;
import java.util.OptionalDouble;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;

/**
 * How a warm-up's drill is played: in two halves, the second one slower where the first was not
 * even. All figures are common practice, no source.
 */
public final class WarmUpPace {
  /** Half of what a click is otherwise, share of full scale: a warm-up starts quiet. */
  public static final double CLICK_GAIN = 0.05;

  /** Even enough to go on: the larger of these, as for a clean round but half as strict. */
  private static final double EVEN_MS = 40;

  private static final double EVEN_SHARE_OF_SLOT = 0.15;

  /** Slower by so much where it was not even. */
  private static final double SLOWER = 0.9;

  private WarmUpPace() {}

  /** The first half of a drill's rounds, or its only one. */
  public static PlayableDrill first(PlayableDrill whole) {
    return whole.drill().withRounds(Math.max(1, whole.rounds() / 2)).playable();
  }

  /**
   * The second half; empty where the drill has one round alone.
   *
   * @param spreadMs how far the first half's notes lay from the beat, milliseconds; empty where
   *     that is not known
   */
  public static Optional<PlayableDrill> second(PlayableDrill whole, OptionalDouble spreadMs) {
    if (whole.rounds() == 1) {
      return Optional.empty();
    }
    PlayableDrill half = first(whole);
    return Optional.of(isEven(spreadMs, half.pulse()) ? half : slower(half));
  }

  private static PlayableDrill slower(PlayableDrill drill) {
    Pulse pulse = drill.pulse();
    double tempo = Math.max(Pulse.SLOWEST, Math.rint(SLOWER * pulse.tempo()));
    return drill.drill().withPulse(pulse.withTempo(tempo)).playable();
  }

  private static boolean isEven(OptionalDouble spreadMs, Pulse pulse) {
    double limit = Math.max(EVEN_MS, EVEN_SHARE_OF_SLOT * 1000 * pulse.slotSeconds());
    return spreadMs.isEmpty() || spreadMs.getAsDouble() <= limit;
  }
}
