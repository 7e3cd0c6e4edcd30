package neckway.desk.read;

import java.util.Arrays;
import neckway.desk.RouteSound;
import neckway.drill.Pulse;

/** How a route should sound from a step on: played by the virtual player with the click. */
final class ModelSound {
  private static final int RATE = 48_000;
  private static final double SLOTS_BEFORE = 0.25;

  private ModelSound() {}

  /**
   * @param step from which step on
   * @param speed share of the drill's tempo
   */
  static TakeSound of(ReadTake take, int step, double speed) {
    Pulse asked = take.drill().pulse();
    Pulse pulse = asked.withTempo(asked.tempo() * speed);
    RouteSound whole = RouteSound.of(take.drill().route(), pulse, RATE);
    double from = Math.max(0, whole.due(step) - SLOTS_BEFORE * pulse.slotSeconds());
    int length = whole.samples().length;
    int first = Math.min(length, (int) (from * RATE));
    return new TakeSound(Arrays.copyOfRange(whole.samples(), first, length), RATE, from);
  }
}
