package neckway.desk.open;

import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.DoubleSupplier;
import java.util.function.Supplier;
import neckway.drill.PlayableDrill;
import neckway.live.LiveRunListener;
import neckway.live.LiveSetup;
import neckway.practice.WarmUpPace;

/**
 * What a warm-up is heard with.
 *
 * @param engine begins a live run, comes back at once, and gives what stops it
 * @param input name of the input; empty: the first
 * @param output name of the output; empty: the first
 * @param clickGain the usual click's, share of full scale; asked on any thread
 */
public record WarmUpSound(
    BiFunction<LiveSetup, LiveRunListener, Runnable> engine,
    Supplier<Optional<String>> input,
    Supplier<Optional<String>> output,
    DoubleSupplier clickGain) {
  /**
   * Begins a drill on a click that is no louder than a warm-up's; nothing of it is kept.
   *
   * @return what stops it
   */
  Runnable begin(PlayableDrill drill, LiveRunListener listener) {
    LiveSetup setup =
        new LiveSetup(
            drill,
            Optional.empty(),
            input.get(),
            output.get(),
            LiveSetup.Start.CLICK,
            () -> Math.min(clickGain.getAsDouble(), WarmUpPace.CLICK_GAIN),
            LiveSetup.Rounds.ONE,
            Optional.empty());
    return engine.apply(setup, listener);
  }
}
