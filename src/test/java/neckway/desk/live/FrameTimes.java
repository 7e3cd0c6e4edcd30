package neckway.desk.live;

import java.util.Arrays;
import java.util.Locale;
import javafx.animation.AnimationTimer;

/** Times from frame to frame of the window. */
final class FrameTimes extends AnimationTimer {
  private final long[] nanos = new long[100_000];
  private int count;
  private long before;

  @Override
  public void handle(long now) {
    if (before != 0 && count < nanos.length) {
      nanos[count++] = now - before;
    }
    before = now;
  }

  /** What the frames since this was last asked were like. */
  String shares() {
    long[] sorted = Arrays.copyOf(nanos, count);
    Arrays.sort(sorted);
    long within = Arrays.stream(sorted).filter(n -> n <= 20_000_000).count();
    String said =
        count == 0
            ? "no frames"
            : String.format(
                Locale.ROOT,
                "%d frames: %.1f %% within 20 ms, median %.1f ms, 95 %% within %.1f ms",
                count,
                100.0 * within / count,
                sorted[count / 2] / 1e6,
                sorted[count * 95 / 100] / 1e6);
    count = 0;
    return said;
  }
}
