package neckway.sound;

import java.util.Optional;

/**
 * Captures a sound whose every sample is one more than the one before, modulo 65,536, and counts
 * where it is not: each such place is sound that was lost, or put in, on the way. Prints one line.
 */
public final class CaptureSoak {
  private static final int STEPS = 65_536;
  private static final int FULL_SCALE = 32_768;

  private CaptureSoak() {}

  /**
   * Runs.
   *
   * @param args seconds
   */
  public static void main(String[] args) {
    double seconds = Double.parseDouble(args[0]);
    try (Capture in = new Capture(Devices.openInput(Optional.empty()))) {
      in.start();
      Steps steps = new Steps(Math.round(seconds * in.sampleRate()));
      Pump.run(in, steps, () -> false);
      System.out.printf(
          "captured %d checked %d breaks %d lost %d overflows %d unread %d%n",
          in.frames(), steps.checked, steps.breaks, steps.lost, in.overflows(), in.lostFrames());
    }
    System.exit(0);
  }

  /** Checks each step from sample to sample, from the first that is not silent on. */
  private static final class Steps implements Pump.Sink {
    private final long wanted;
    private long breaks;
    private long lost;
    private long checked;
    private int last;
    private boolean counting;

    Steps(long wanted) {
      this.wanted = wanted;
    }

    @Override
    public boolean take(float[] samples, int length) {
      for (int i = 0; i < length; i++) {
        int value = Math.round(samples[i] * FULL_SCALE);
        if (counting) {
          check(Math.floorMod(value - last, STEPS));
        }
        counting |= value != 0;
        last = value;
      }
      return checked < wanted;
    }

    private void check(int step) {
      checked++;
      if (step != 1) {
        breaks++;
        lost += step;
      }
    }
  }
}
