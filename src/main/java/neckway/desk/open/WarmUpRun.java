package neckway.desk.open;

import java.util.OptionalDouble;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import neckway.drill.PlayableDrill;
import neckway.follow.NoteVerdict;
import neckway.live.LiveResult;
import neckway.live.LiveRunListener;
import neckway.page.PageModel;
import neckway.review.Grid;

/** One half of a warm-up's drill as it is played. Told of by the engine's thread. */
final class WarmUpRun implements LiveRunListener {
  /** Told what happens, in the window's thread. */
  interface Told {
    /** The figure of the count-in; empty once it is over. */
    void count(String figure);

    /** The page of what is played has changed. */
    void page(Consumer<PageModel> change);

    void complaint(String line);

    void over(WarmUpRun run);
  }

  private final PlayableDrill drill;
  private final Executor window;
  private final Told told;
  private Runnable stop = () -> {};
  private volatile boolean heard;
  private volatile OptionalDouble spreadMs = OptionalDouble.empty();

  /**
   * @param window where what happens is told
   */
  WarmUpRun(PlayableDrill drill, Executor window, Told told) {
    this.drill = drill;
    this.window = window;
    this.told = told;
  }

  void begin(WarmUpSound sound) {
    stop = sound.begin(drill, this);
  }

  void stop() {
    stop.run();
  }

  /** Whether it was heard to its end, or as far as it was let. */
  boolean wasHeard() {
    return heard;
  }

  /** How far the notes lay from the beat, milliseconds, where that is known. */
  OptionalDouble spreadMs() {
    return spreadMs;
  }

  @Override
  public void begun(Grid grid) {
    window.execute(() -> told.page(page -> page.begun(grid)));
  }

  @Override
  public void decided(NoteVerdict verdict) {
    // how far one has come is shown; nothing is counted in a warm-up
    window.execute(() -> told.page(page -> page.decided(verdict)));
  }

  @Override
  public void beat(long beat) {
    long figure = drill.pulse().countIn() + beat + 1;
    window.execute(() -> told.count(beat < 0 ? Long.toString(figure) : ""));
  }

  @Override
  public void complaint(String line) {
    window.execute(() -> told.complaint(line));
  }

  @Override
  public void roundEnded(LiveResult result) {
    heard = true;
    spreadMs = result.review().summary().offMsSpread();
  }

  @Override
  public void over() {
    window.execute(() -> told.over(this));
  }
}
