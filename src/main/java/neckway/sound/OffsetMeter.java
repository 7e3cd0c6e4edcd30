package neckway.sound;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * How the frames of the input relate to those of the output in this run: input frame = output frame
 * + offset, by what both devices say of their own positions.
 *
 * <p>The two lines start at different instants, so the offset is another one in each run; within a
 * run it is constant. A device tells its position in steps of up to a period (20 ms), so many
 * readings are taken and a low quantile of them, which is steady to a fraction of a millisecond
 * where the mean is not. What the devices do not count, such as converters and mixing, is the same
 * in each run: {@link RoundTrip}.
 */
final class OffsetMeter {
  /** Share of the readings below the one taken. */
  static final double QUANTILE = 0.05;

  private static final int LEAST = 40;
  private static final int MOST = 400;

  private final double[] readings = new double[MOST];
  private int next;
  private int count;

  /** Takes a reading. */
  void add(double offsetFrames) {
    readings[next] = offsetFrames;
    next = (next + 1) % MOST;
    count = Math.min(MOST, count + 1);
  }

  /**
   * The offset in frames by the last {@value #MOST} readings, some two seconds; empty before there
   * are enough.
   */
  OptionalDouble offsetFrames() {
    if (count < LEAST) {
      return OptionalDouble.empty();
    }
    double[] sorted = Arrays.copyOf(readings, count);
    Arrays.sort(sorted);
    return OptionalDouble.of(sorted[(int) (QUANTILE * count)]);
  }
}
